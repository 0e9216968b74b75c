import { hash, verify } from '@node-rs/argon2';

/** Argon2id, 19 MiB, two passes, one lane: OWASP Password Storage Cheat Sheet. */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** What is stored in place of a password. */
export function hashPassword(password: string): Promise<string> {
  return hash(password, cost);
}

/** A hash that fits no password anybody knows: lets a sign-in for an unknown address take as long as any other. */
const nobodys = hashPassword(crypto.randomUUID());

/**
 * Whether a password fits.
 * @param passwordHash null where there is no such person; the answer is then false, in the same time
 */
export async function isPasswordRight(passwordHash: string | null, password: string): Promise<boolean> {
  const fits = await verify(passwordHash ?? (await nobodys), password);
  return passwordHash !== null && fits;
}
