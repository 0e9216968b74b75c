import { Prisma } from './generated/sqlite/client.js';

/** Whether a write failed because a row with the same unique values stands already; the same on both databases. */
export function isUniqueConflict(error: unknown): boolean {
  return error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2002';
}
