import type { FastifyInstance, FastifyRequest } from 'fastify';
import { DomainError } from './domain-error.js';

/** Failed attempts for one mail address, and from one place on the network, within a quarter of an hour. */
const perPerson = 10;
const perPlace = 100;
const timeWindowMs = 15 * 60 * 1000;

/** More attempts for one person than this do not wait for each other: they are refused. */
const mostWaiting = 20;

/** Runs an attempt; throws too-many-requests instead where there were too many failures. */
export type LimitedAttempt = <T>(request: FastifyRequest, attempt: () => Promise<T>) => Promise<T>;

/**
 * Counts failed sign-ins only: a whole workshop behind one address signs in as often as it likes, while somebody who
 * tries passwords is stopped. Attempts for one person go one after the other, so that a burst gains nothing.
 * @param nameOf who is tried, from the request
 */
export function signInLimit(
  app: FastifyInstance,
  nameOf: (request: FastifyRequest) => string,
): LimitedAttempt {
  const options = { timeWindow: timeWindowMs };
  const limits = [
    app.createRateLimit({ ...options, max: perPerson, keyGenerator: (request) => `who ${nameOf(request)}` }),
    app.createRateLimit({ ...options, max: perPlace, keyGenerator: (request) => `from ${request.ip}` }),
  ];
  const turns = new Map<string, { last: Promise<unknown>; waiting: number }>();

  const check = async (request: FastifyRequest): Promise<void> => {
    for (const limit of limits) {
      const state = await limit(request, { increment: false });
      if (!state.isAllowed && state.remaining === 0) throw tooMany(state.ttlInSeconds);
    }
  };
  const tryOnce = async <T>(request: FastifyRequest, attempt: () => Promise<T>): Promise<T> => {
    await check(request);
    try {
      return await attempt();
    } catch (error) {
      for (const limit of limits) await limit(request);
      throw error;
    }
  };
  return async (request, attempt) => {
    const name = nameOf(request);
    const turn = turns.get(name) ?? { last: Promise.resolve(), waiting: 0 };
    if (turn.waiting >= mostWaiting) throw tooMany(60);
    const mine = turn.last.then(() => tryOnce(request, attempt));
    turn.last = mine.catch(() => undefined);
    turn.waiting += 1;
    turns.set(name, turn);
    try {
      return await mine;
    } finally {
      turn.waiting -= 1;
      if (turn.waiting === 0) turns.delete(name);
    }
  };
}

function tooMany(waitS: number): DomainError {
  const minutes = Math.max(1, Math.ceil(waitS / 60));
  const wait = minutes === 1 ? 'a minute' : `${minutes} minutes`;
  return new DomainError('too-many-requests', `too many failed attempts; try again in ${wait}`);
}
