import type { Setup } from '@pullbook/contracts';
import type { PrismaClient } from '@pullbook/database';
import type { z } from 'zod';
import type { Mode } from '../plumbing/app-parts.js';

/** What a fresh book still needs before anybody can sign in. */
export async function getSetup(book: { client: PrismaClient; mode: Mode }): Promise<z.infer<typeof Setup>> {
  const demo = book.mode === 'demo';
  return { needsFirstOwner: !demo && (await hasNoOwner(book.client)), demo };
}

/** Whether nobody has founded a real workshop yet; the demo workshop does not count. */
export async function hasNoOwner(client: PrismaClient): Promise<boolean> {
  return (await client.workshop.findFirst({ where: { isDemo: false } })) === null;
}
