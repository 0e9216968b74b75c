import type { Me, SignIn } from '@pullbook/contracts';
import type { PrismaClient } from '@pullbook/database';
import type { Mode } from '../plumbing/app-parts.js';
import { DomainError } from '../plumbing/domain-error.js';
import { isPasswordRight } from '../plumbing/passwords.js';
import { openSignIn } from './open-sign-in.js';
import { presentMe } from './present-people.js';

interface Door {
  readonly client: PrismaClient;
  readonly mode: Mode;
  readonly now: () => Date;
}

/**
 * Lets a member in. An unknown address and a wrong password are answered alike, in the same time.
 * @returns who it is, and the secret for the cookie
 * @throws DomainError wrong-email-or-password
 */
export async function signInMember(door: Door, input: SignIn): Promise<{ me: Me; secret: string }> {
  const found = await door.client.member.findUnique({
    where: { email: input.email.toLowerCase() },
    include: { workshop: true },
  });
  const mayEnter = found !== null && found.active && (!found.workshop.isDemo || door.mode === 'demo');
  const fits = await isPasswordRight(mayEnter ? found.passwordHash : null, input.password);
  if (!mayEnter || !fits) {
    throw new DomainError('wrong-email-or-password', 'email or password is wrong');
  }
  return { me: presentMe(found), secret: await openSignIn(door.client, found, door.now()) };
}
