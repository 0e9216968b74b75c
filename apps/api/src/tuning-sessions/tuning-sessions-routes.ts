import {
  IdParams,
  ReadinessAnswer,
  TuningSession,
  TuningSessionChange,
  TuningSessionNew,
  pageOf,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import type { Actor } from '../plumbing/actor.js';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { answerReadiness } from './answer-readiness.js';
import { changeSession } from './change-session.js';
import { findSessions } from './find-sessions.js';
import { getSession } from './get-session.js';
import { startSession } from './start-session.js';
import '../plumbing/app-parts.js';

const tags = ['tuning sessions'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };
const SessionPage = pageOf(TuningSession).meta({ id: 'TuningSessionPage' });

/** Tuning sessions of a visit and their readiness checks. */
export const tuningSessionsRoutes: FastifyPluginAsyncZod = async (app) => {
  const announce = ({ workshopId }: Actor, { id, visitId }: TuningSession): void =>
    app.announce(workshopId, { noun: 'tuning-session', id, visitId });

  app.get(
    '/visits/:id/tuning-sessions',
    { schema: { tags, params: IdParams, response: { 200: SessionPage } } },
    async ({ actor, params }) => ({ items: await findSessions(actor, params.id), nextCursor: null }),
  );

  app.post(
    '/visits/:id/tuning-sessions',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: TuningSessionNew, response: { 201: TuningSession } },
    },
    async ({ actor, params, body }, reply) => {
      const session = await startSession(actor, params.id, body);
      announce(actor, session);
      app.announce(actor.workshopId, { noun: 'visit', id: session.visitId, visitId: session.visitId });
      return reply.code(201).send(replyRecord(reply, session));
    },
  );

  app.get(
    '/tuning-sessions/:id',
    { schema: { tags, params: IdParams, response: { 200: TuningSession } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getSession(actor, params.id)),
  );

  app.patch(
    '/tuning-sessions/:id',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: TuningSessionChange, response: { 200: TuningSession } },
    },
    async (request, reply) => {
      const { actor, params, body } = request;
      const session = await changeSession(actor, params.id, seenRevision(request), body);
      announce(actor, session);
      return replyRecord(reply, session);
    },
  );

  app.put(
    '/tuning-sessions/:id/readiness-check',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: ReadinessAnswer, response: { 200: TuningSession } },
    },
    async (request, reply) => {
      const { actor, params, body } = request;
      const session = await answerReadiness(actor, params.id, seenRevision(request), body);
      announce(actor, session);
      return replyRecord(reply, session);
    },
  );
};
