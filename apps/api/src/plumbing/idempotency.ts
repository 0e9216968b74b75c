import { isUniqueConflict, type KeptReply } from '@pullbook/database';
import type { FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { createHash } from 'node:crypto';
import type { Actor } from './actor.js';
import { DomainError } from './domain-error.js';
import './app-parts.js';

/** After this time an attempt that never ended is taken for cut off: no request takes so long. */
const cutOffMs = 120_000;

declare module 'fastify' {
  interface FastifyRequest {
    keptReplyId: string | null;
  }
}

/**
 * Honours `Idempotency-Key` on every POST: a phone that sends a pull twice makes one pull, and gets the same reply.
 * Only what was done is kept; a refusal is thought over anew.
 */
export const idempotency = fp(
  async (app) => {
    app.decorateRequest('keptReplyId', null);
    app.addHook('preHandler', async (request, reply) => {
      const key = keyOf(request);
      if (key === null || request.signedIn === null) return;
      const kept = await claimKey(request.signedIn, key, hashRequest(request));
      if ('again' in kept) {
        await replyAgain(reply, kept.again);
        return;
      }
      request.keptReplyId = kept.id;
      request.signedIn = { ...request.signedIn, keptReplyId: kept.id };
    });
    app.addHook('onSend', async (request, reply, payload) => {
      if (request.keptReplyId === null || request.signedIn === null) return payload;
      await settle(request.signedIn, request.keptReplyId, { status: reply.statusCode, payload });
      return payload;
    });
  },
  { name: 'idempotency', dependencies: ['sign-in'] },
);

function keyOf(request: FastifyRequest): string | null {
  const key = request.headers['idempotency-key'];
  const { config } = request.routeOptions;
  if (key === undefined || request.method !== 'POST' || config.keepsNoReply || config.public) return null;
  if (typeof key === 'string' && key.length >= 8 && key.length <= 200) return key;
  const errors = [{ field: 'Idempotency-Key', message: 'must have 8 to 200 characters' }];
  throw new DomainError('invalid-request', 'Idempotency-Key must have 8 to 200 characters', { errors });
}

/** Of an upload in parts, whose bytes have not come in yet, only address and length are known. */
function hashRequest(request: FastifyRequest): string {
  const hash = createHash('sha256').update(`${request.method} ${request.url}\n`);
  const { body } = request;
  if (Buffer.isBuffer(body) || typeof body === 'string') return hash.update(body).digest('hex');
  return hash.update(JSON.stringify(body ?? request.headers['content-length'] ?? '')).digest('hex');
}

type Claim = { id: string } | { again: KeptReply };

async function claimKey(actor: Actor, key: string, requestHash: string): Promise<Claim> {
  try {
    const data = { memberId: actor.memberId, key, requestHash, createdAt: actor.now() };
    return { id: (await actor.db.keptReply.create({ data })).id };
  } catch (error) {
    if (!isUniqueConflict(error)) throw error;
  }
  const before = await actor.db.keptReply.findFirst({ where: { memberId: actor.memberId, key } });
  if (before?.requestHash !== undefined && before.requestHash !== requestHash) {
    throw new DomainError('idempotency-key-reused', 'this key was sent with another request before');
  }
  if (before && before.status !== null) return { again: before };
  return takeOver(actor, before);
}

/** An attempt with this key never ended: it is still at work, or it was cut off before or after it was written. */
async function takeOver(actor: Actor, before: KeptReply | null): Promise<Claim> {
  const now = actor.now();
  if (before?.madeRecordId) {
    const errors = [{ field: 'recordId', message: before.madeRecordId }];
    const message = `this was recorded already, as ${before.madeRecordId}`;
    throw new DomainError('recorded-already', message, { errors });
  }
  if (!before || now.getTime() - before.createdAt.getTime() < cutOffMs) {
    throw stillAtWork();
  }
  const where = { id: before.id, createdAt: before.createdAt, status: null, madeRecordId: null };
  const { count } = await actor.db.keptReply.updateMany({ where, data: { createdAt: now } });
  if (count === 1) return { id: before.id };
  throw stillAtWork();
}

function stillAtWork(): DomainError {
  return new DomainError('still-at-work', 'the same request is still at work; ask again in a moment');
}

async function replyAgain(reply: FastifyReply, kept: KeptReply): Promise<void> {
  const body = kept.body ?? '';
  const revision = (JSON.parse(body || '{}') as { revision?: unknown }).revision;
  if (typeof revision === 'number') reply.header('etag', `"${revision}"`);
  await reply
    .code(kept.status ?? 200)
    .header('idempotency-replayed', 'true')
    .type('application/json; charset=utf-8')
    .serializer((text: unknown) => String(text))
    .send(body);
}

interface Outcome {
  readonly status: number;
  readonly payload: unknown;
}

/** A success is kept; a refusal is forgotten, unless something was made before the reply went wrong. */
async function settle(actor: Actor, id: string, { status, payload }: Outcome): Promise<void> {
  if (status >= 200 && status < 300) {
    const body = typeof payload === 'string' ? payload : '';
    await actor.db.keptReply.updateMany({ where: { id }, data: { status, body } });
    return;
  }
  await actor.db.keptReply.deleteMany({ where: { id, status: null, madeRecordId: null } });
}
