import type { Car, CarQuery } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage } from '../plumbing/paging.js';
import { searchWords } from '../plumbing/search-text.js';
import { carParts, presentCar } from './present-car.js';

/** Cars by plate; `q` looks in plate, model, VIN and build code, and in the customer's name, telephone and mail. */
export async function findCars(
  actor: Actor,
  query: z.infer<typeof CarQuery>,
): Promise<{ items: Car[]; nextCursor: string | null }> {
  const found = searchWords(query.q).map((word) => {
    const contains = { searchText: { contains: word } };
    return { OR: [contains, { customer: contains }] };
  });
  const rows = await actor.db.car.findMany({
    ...pageArguments(query),
    where: {
      ...(query.customerId === undefined ? {} : { customerId: query.customerId }),
      AND: found,
    },
    orderBy: [{ plateKey: 'asc' }, { id: 'asc' }],
    include: carParts,
  });
  return toPage(rows, query, presentCar);
}
