import type { Actor } from '../plumbing/actor.js';
import { hashSecret } from '../plumbing/secrets.js';

/** Ends one browser's sign-in; the others of the same person stay. */
export async function signOutMember(actor: Actor, secret: string): Promise<void> {
  await actor.db.signIn.deleteMany({ where: { secretHash: hashSecret(secret) } });
}
