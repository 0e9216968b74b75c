import type { Controller, ControllerQuery } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage } from '../plumbing/paging.js';
import { presentController } from './present-controller.js';

/** The kinds of controller that the workshop has described, by name. */
export async function findControllers(
  actor: Actor,
  query: z.infer<typeof ControllerQuery>,
): Promise<{ items: Controller[]; nextCursor: string | null }> {
  const orderBy = [{ name: 'asc' as const }, { id: 'asc' as const }];
  const rows = await actor.db.controller.findMany({ ...pageArguments(query), orderBy });
  return toPage(rows, query, presentController);
}
