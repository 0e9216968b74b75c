import type { LookalikeQuery, Lookalikes } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { z } from 'zod';
import { plateKey } from '../cars/plate-key.js';
import type { Actor } from '../plumbing/actor.js';
import { searchText, searchWords } from '../plumbing/search-text.js';

type Query = z.infer<typeof LookalikeQuery>;
type Found = z.infer<typeof Lookalikes>;

/** So many of each are enough to choose from. */
const most = 10;
/** A telephone number is compared by its end: people write the beginning in many ways. */
const phoneDigits = 7;
const fewestPhoneDigits = 5;

/** Customers and cars on record that look like the ones being typed in, each with the reason. */
export async function findLookalikes(actor: Actor, query: Query): Promise<Found> {
  const [customers, cars] = await Promise.all([
    findCustomersLike(actor.db, query),
    findCarsLike(actor.db, query),
  ]);
  return { customers, cars };
}

async function findCustomersLike(db: WorkshopTransaction, query: Query): Promise<Found['customers']> {
  const words = searchWords(query.name);
  const phone = phoneEnd(query.phone);
  const email = searchText(query.email);
  const contains = (text: string): object => ({ searchText: { contains: text } });
  const conditions = [
    ...(words.length > 0 ? [{ AND: words.map(contains) }] : []),
    ...(phone === null ? [] : [contains(phone)]),
    ...(email.includes('@') ? [contains(email)] : []),
  ];
  if (conditions.length === 0) return [];
  const orderBy = [{ name: 'asc' as const }, { id: 'asc' as const }];
  const rows = await db.customer.findMany({ where: { OR: conditions }, orderBy, take: most });
  return rows.map((row) => ({ id: row.id, name: row.name, phone: row.phone, why: whyCustomer(row, query) }));
}

function whyCustomer(
  row: { name: string; phone: string | null; email: string | null },
  query: Query,
): string {
  const phone = phoneEnd(query.phone);
  const reasons = [
    ...(row.email !== null && searchText(row.email) === searchText(query.email) ? ['same mail address'] : []),
    ...(phone !== null && searchText(row.phone).endsWith(phone) ? ['same telephone number'] : []),
    ...(searchText(row.name) === searchText(query.name) ? ['same name'] : []),
  ];
  return reasons.length === 0 ? 'similar name' : reasons.join(', ');
}

function phoneEnd(phone: string | undefined): string | null {
  const digits = (phone ?? '').replace(/\D/g, '');
  return digits.length < fewestPhoneDigits ? null : digits.slice(-phoneDigits);
}

async function findCarsLike(db: WorkshopTransaction, query: Query): Promise<Found['cars']> {
  const plate = plateKey(query.plate ?? '');
  const vin = (query.vin ?? '').trim().toUpperCase();
  const conditions = [...(plate === '' ? [] : [{ plateKey: plate }]), ...(vin === '' ? [] : [{ vin }])];
  if (conditions.length === 0) return [];
  const orderBy = [{ plateKey: 'asc' as const }, { id: 'asc' as const }];
  const include = { customer: { select: { name: true } } };
  const rows = await db.car.findMany({ where: { OR: conditions }, orderBy, include, take: most });
  return rows.map((row) => ({
    id: row.id,
    plate: row.plate,
    model: row.model,
    customerId: row.customerId,
    customerName: row.customer.name,
    why: [
      ...(row.plateKey === plate ? ['same plate'] : []),
      ...(vin !== '' && row.vin === vin ? ['same VIN'] : []),
    ].join(', '),
  }));
}
