import type { FirstOwner, Me } from '@pullbook/contracts';
import type { PrismaClient } from '@pullbook/database';
import type { z } from 'zod';
import { createHash, timingSafeEqual } from 'node:crypto';
import type { Mode } from '../plumbing/app-parts.js';
import { DomainError } from '../plumbing/domain-error.js';
import { hashPassword } from '../plumbing/passwords.js';
import { hasNoOwner } from './get-setup.js';
import { openSignIn } from './open-sign-in.js';
import { presentMe } from './present-people.js';

export interface FreshBook {
  readonly client: PrismaClient;
  readonly mode: Mode;
  readonly now: () => Date;
  /** The code that was printed at start; null where none was. */
  readonly code: string | null;
}

/**
 * Founds the workshop with its first owner.
 * @throws DomainError conflict where there is an owner already, not-allowed for a wrong code
 */
export async function becomeFirstOwner(
  book: FreshBook,
  input: z.infer<typeof FirstOwner>,
): Promise<{ me: Me; secret: string }> {
  if (book.mode === 'demo' || book.code === null || !(await hasNoOwner(book.client))) {
    throw new DomainError('conflict', 'this book has an owner already: sign in');
  }
  if (!isSame(input.code, book.code)) {
    const errors = [{ field: 'code', message: 'is not the code that was printed when the server started' }];
    throw new DomainError('not-allowed', 'the code is not the one that was printed at start', { errors });
  }
  const member = await found(book, input, await hashPassword(input.password));
  return { me: presentMe(member), secret: await openSignIn(book.client, member, book.now()) };
}

async function found(
  book: FreshBook,
  input: z.infer<typeof FirstOwner>,
  passwordHash: string,
): Promise<Parameters<typeof presentMe>[0]> {
  return book.client.$transaction(async (tx) => {
    // Asked again inside: of two owners who send the code at once, the second comes too late.
    if (await tx.workshop.findFirst({ where: { isDemo: false } })) {
      throw new DomainError('conflict', 'this book has an owner already: sign in');
    }
    const workshop = await tx.workshop.create({ data: { name: input.workshopName, createdAt: book.now() } });
    const member = await tx.member.create({
      data: {
        workshopId: workshop.id,
        name: input.name,
        email: input.email.toLowerCase(),
        role: 'owner',
        passwordHash,
        tourStep: 0,
        createdAt: book.now(),
      },
    });
    await tx.auditEvent.create({
      data: {
        workshopId: workshop.id,
        action: 'workshop-founded',
        noun: 'workshop',
        recordId: workshop.id,
        summary: `founded the workshop ${workshop.name}`,
        detail: {},
        by: member.name,
        at: book.now(),
      },
    });
    return { ...member, workshop };
  });
}

/** Compares by hash, so that the time taken tells nothing of how much was right. */
function isSame(given: string, wanted: string): boolean {
  const hashOf = (text: string): Buffer => createHash('sha256').update(text.trim().toUpperCase()).digest();
  return timingSafeEqual(hashOf(given), hashOf(wanted));
}
