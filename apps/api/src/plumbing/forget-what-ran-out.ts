import type { PrismaClient } from '@pullbook/database';

/** A phone that has been without network for longer has other worries than a pull sent twice. */
const keptReplyMs = 60 * 24 * 3600 * 1000;

/** Clears away sign-ins that ran out and replies that were kept for long enough; nothing of the book itself. */
export async function forgetWhatRanOut(client: PrismaClient, now: Date): Promise<void> {
  await client.signIn.deleteMany({ where: { expiresAt: { lte: now } } });
  await client.keptReply.deleteMany({ where: { createdAt: { lt: new Date(now.getTime() - keptReplyMs) } } });
}
