import { createHash, randomBytes } from 'node:crypto';

/** A secret that nobody can guess: 256 bits, in letters and digits fit for an address. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** What is stored in place of a secret; a plain hash is enough, since the secret is random and long. */
export function hashSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
