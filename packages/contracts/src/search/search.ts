import * as z from 'zod';
import { Id, Line } from '../basics/basics.js';
import { Stage } from '../visits/visits.js';

/** What somebody typed who looks for something: part of a plate, a name, a telephone number, a visit's number. */
export const SearchQuery = z.object({ q: z.string().trim().min(1).max(100) });

/** The nearest records of each kind, best first; never more than a person takes in at a glance. */
export const SearchAnswer = z
  .object({
    visits: z.array(
      z.object({
        id: Id,
        number: z.number().int().min(1),
        plate: Line,
        model: Line,
        customerName: Line,
        stage: Stage,
      }),
    ),
    cars: z.array(z.object({ id: Id, plate: Line, model: Line, customerName: Line })),
    customers: z.array(z.object({ id: Id, name: Line, phone: z.string().nullable() })),
  })
  .meta({ id: 'SearchAnswer' });
export type SearchAnswer = z.infer<typeof SearchAnswer>;
