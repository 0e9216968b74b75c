import { IdParams, Pull, PullFoundSound, PullList, PullNew, PullQuery, PullVoid } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { findCarSound } from './find-car-sound.js';
import { findPulls } from './find-pulls.js';
import { recordPull } from './record-pull.js';
import { voidPull } from './void-pull.js';
import '../plumbing/app-parts.js';

const tags = ['pulls'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };

/** The pulls of a tuning session: recorded, read, voided, marked where the car was found sound, never changed. */
export const pullsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/tuning-sessions/:id/pulls',
    { schema: { tags, params: IdParams, querystring: PullQuery, response: { 200: PullList } } },
    async ({ actor, params, query }) => ({ items: await findPulls(actor, params.id, query.presetId) }),
  );

  app.post(
    '/tuning-sessions/:id/pulls',
    { ...forTuners, schema: { tags, params: IdParams, body: PullNew, response: { 201: Pull } } },
    async ({ actor, params, body }, reply) => {
      const { pull, visitId } = await recordPull(actor, params.id, body);
      app.announce(actor.workshopId, { noun: 'pull', id: pull.id, visitId });
      return reply.code(201).send(pull);
    },
  );

  app.post(
    '/pulls/:id/void',
    { ...forTuners, schema: { tags, params: IdParams, body: PullVoid, response: { 200: Pull } } },
    async ({ actor, params, body }) => {
      const { pull, visitId } = await voidPull(actor, params.id, body.reason);
      app.announce(actor.workshopId, { noun: 'pull', id: pull.id, visitId });
      return pull;
    },
  );

  app.post(
    '/pulls/:id/found-sound',
    { ...forTuners, schema: { tags, params: IdParams, body: PullFoundSound, response: { 200: Pull } } },
    async ({ actor, params, body }) => {
      const { pull, visitId } = await findCarSound(actor, params.id, body.note);
      app.announce(actor.workshopId, { noun: 'pull', id: pull.id, visitId });
      return pull;
    },
  );
};
