import { IdParams, Log, LogAnalyse, LogVersionList, LogVersionParams } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { visitOfSession } from '../tuning-sessions/visit-of-session.js';
import { analyseAgain } from './analyse-again.js';
import { findLogVersions } from './find-log-versions.js';
import { getLog } from './get-log.js';
import '../plumbing/app-parts.js';

const tags = ['logs'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };

/** Computations of a log: all of them, each as it was, and a new one. */
export const logVersionsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/logs/:id/versions',
    { schema: { tags, params: IdParams, response: { 200: LogVersionList } } },
    async ({ actor, params }) => ({ items: await findLogVersions(actor, params.id) }),
  );

  app.get(
    '/logs/:id/versions/:number',
    { schema: { tags, params: LogVersionParams, response: { 200: Log } } },
    ({ actor, params }) => getLog(actor, params.id, params.number),
  );

  app.post(
    '/logs/:id/analyse',
    { ...forTuners, schema: { tags, params: IdParams, body: LogAnalyse, response: { 201: Log } } },
    async ({ actor, params, body }, reply) => {
      const log = await analyseAgain(actor, app.objects, params.id, body);
      const visitId = await visitOfSession(actor.db, log.tuningSessionId);
      app.announce(actor.workshopId, { noun: 'log', id: log.id, visitId });
      return reply.code(201).send(log);
    },
  );
};
