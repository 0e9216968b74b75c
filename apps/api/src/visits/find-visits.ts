import type { Visit, VisitQuery } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage } from '../plumbing/paging.js';
import { presentVisit, visitParts } from './present-visit.js';

/** Visits, newest first; `open` means not collected yet. */
export async function findVisits(
  actor: Actor,
  query: z.infer<typeof VisitQuery>,
): Promise<{ items: Visit[]; nextCursor: string | null }> {
  const { stage, carId, open } = query;
  const rows = await actor.db.visit.findMany({
    ...pageArguments(query),
    where: {
      AND: [
        stage === undefined ? {} : { stage },
        carId === undefined ? {} : { carId },
        open === undefined ? {} : { stage: open ? { not: 'collected' } : 'collected' },
      ],
    },
    orderBy: [{ number: 'desc' }, { id: 'desc' }],
    include: visitParts,
  });
  return toPage(rows, query, presentVisit);
}
