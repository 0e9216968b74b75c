import { Stage, type SearchAnswer } from '@pullbook/contracts';
import { plateKey } from '../cars/plate-key.js';
import type { Actor } from '../plumbing/actor.js';
import { searchWords } from '../plumbing/search-text.js';

/** As many of each kind as are taken in at a glance. */
const most = 6;

/**
 * Finds what somebody asks for by a few letters: visits (those in the house before those that have left), cars and
 * customers of this workshop. A plate is found with and without its blanks and dashes, and what begins with the letters
 * comes before what has them inside; a number finds the visit that bears it.
 *
 * @param typed 1 to 100 characters
 */
export async function searchBook(actor: Actor, typed: string): Promise<SearchAnswer> {
  const ofCar = carsThatMatch(typed);
  if (ofCar === null) return { visits: [], cars: [], customers: [] };
  const [visits, cars, customers] = await Promise.all([
    findVisits(actor, typed, ofCar),
    findCars(actor, typed, ofCar),
    findCustomers(actor, typed),
  ]);
  return { visits, cars, customers };
}

type CarFilter = NonNullable<ReturnType<typeof carsThatMatch>>;

/** Cars whose plate has all of it in a row, or of which each word is found in car or customer; null for no letters. */
function carsThatMatch(typed: string) {
  const words = searchWords(typed).map((word) => {
    const contains = { searchText: { contains: word } };
    return { OR: [contains, { customer: contains }] };
  });
  const plate = plateKey(typed);
  if (words.length === 0) return null;
  return { OR: [{ AND: words }, ...(plate === '' ? [] : [{ plateKey: { contains: plate } }])] };
}

const visitFields = {
  ...{ id: true, number: true, stage: true },
  car: { select: { plate: true, model: true, customer: { select: { name: true } } } },
} as const;

async function findVisits({ db }: Actor, typed: string, car: CarFilter): Promise<SearchAnswer['visits']> {
  const orderBy = [{ number: 'desc' as const }, { id: 'desc' as const }];
  const read = (where: object) => db.visit.findMany({ where, orderBy, take: most, select: visitFields });
  const number = /^#?\s*0*(\d{1,9})$/.exec(typed)?.[1];
  const [named, open, left] = await Promise.all([
    number === undefined ? [] : read({ number: Number(number) }),
    read({ car, stage: { not: 'collected' } }),
    read({ car, stage: 'collected' }),
  ]);
  return firstOf([...named, ...open, ...left]).map((row) => ({
    id: row.id,
    number: row.number,
    plate: row.car.plate,
    model: row.car.model,
    customerName: row.car.customer.name,
    stage: Stage.parse(row.stage),
  }));
}

async function findCars({ db }: Actor, typed: string, car: CarFilter): Promise<SearchAnswer['cars']> {
  const read = (where: object) =>
    db.car.findMany({
      where,
      orderBy: [{ plateKey: 'asc' }, { id: 'asc' }],
      take: most,
      select: { id: true, plate: true, model: true, customer: { select: { name: true } } },
    });
  const plate = plateKey(typed);
  const [begin, others] = await Promise.all([
    plate === '' ? [] : read({ plateKey: { startsWith: plate } }),
    read(car),
  ]);
  return firstOf([...begin, ...others]).map(({ id, plate, model, customer }) => ({
    ...{ id, plate, model },
    customerName: customer.name,
  }));
}

async function findCustomers({ db }: Actor, typed: string): Promise<SearchAnswer['customers']> {
  return db.customer.findMany({
    where: { AND: searchWords(typed).map((word) => ({ searchText: { contains: word } })) },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: most,
    select: { id: true, name: true, phone: true },
  });
}

/** The first few, each once. */
function firstOf<Row extends { readonly id: string }>(rows: readonly Row[]): Row[] {
  return [...new Map(rows.map((row) => [row.id, row])).values()].slice(0, most);
}
