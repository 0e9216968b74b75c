import type { FastifyReply, FastifyRequest } from 'fastify';
import { DomainError } from './domain-error.js';

/**
 * The revision that the sender of a change has seen, from `If-Match: "<revision>"`.
 * @throws DomainError precondition-missing without the header, invalid-request where it holds no revision
 */
export function seenRevision(request: FastifyRequest): number {
  const header = request.headers['if-match'];
  if (header === undefined) {
    throw new DomainError(
      'precondition-missing',
      'send the revision that you saw as If-Match, so that no change of somebody else is lost',
    );
  }
  const found = /^"?([1-9][0-9]{0,8})"?$/.exec(header.trim());
  if (!found) {
    const errors = [{ field: 'If-Match', message: 'must be one revision, such as "3"' }];
    throw new DomainError('invalid-request', 'If-Match must be one revision, such as "3"', { errors });
  }
  return Number(found[1]);
}

/** Answers with a record and its revision as ETag. */
export function replyRecord<T extends { revision: number }>(reply: FastifyReply, record: T): T {
  reply.header('etag', `"${record.revision}"`);
  return record;
}

/** What to say where a change came too late. */
export function changedMeanwhile(noun: string): DomainError {
  return new DomainError(
    'changed-meanwhile',
    `somebody changed this ${noun} meanwhile; look at it again first`,
  );
}
