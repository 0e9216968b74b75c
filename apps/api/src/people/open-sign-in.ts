import { scopeToWorkshop, type Member, type PrismaClient } from '@pullbook/database';
import { hashSecret, newSecret } from '../plumbing/secrets.js';
import { signInMs } from '../plumbing/sign-in-cookie.js';

/** Notes that a browser is signed in, clears away what has run out, and returns the secret for the cookie. */
export async function openSignIn(client: PrismaClient, member: Member, now: Date): Promise<string> {
  const db = scopeToWorkshop(client, member.workshopId);
  const secret = newSecret();
  await db.signIn.deleteMany({ where: { expiresAt: { lte: now } } });
  await db.signIn.create({
    data: {
      memberId: member.id,
      secretHash: hashSecret(secret),
      expiresAt: new Date(now.getTime() + signInMs),
      createdAt: now,
    },
  });
  return secret;
}
