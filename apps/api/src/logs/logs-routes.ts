import {
  IdParams,
  Log,
  LogAnalysis,
  LogConfirm,
  LogHeadList,
  LogList,
  LogQuery,
  PullList,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { analyseUpload } from './analyse-upload.js';
import { confirmPulls } from './confirm-pulls.js';
import { findLogHeads } from './find-log-heads.js';
import { findLogs } from './find-logs.js';
import { getLog } from './get-log.js';
import { MOST_LOG_BYTES } from './log-pieces.js';
import { recordLog } from './record-log.js';
import { uploadedFile } from './uploaded-file.js';
import '../plumbing/app-parts.js';

const tags = ['logs'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };
/** Makes no record, so there is no reply to keep; any member may. */
const computed = { config: { roles: ['owner', 'tuner', 'desk'] as const, keepsNoReply: true } };
const upload = { bodyLimit: MOST_LOG_BYTES };

/** Logs: taken in, analysed, read, and their pulls taken into the book. */
export const logsRoutes: FastifyPluginAsyncZod = async (app) => {
  // The body stays on the wire until the handler reads it, piece by piece.
  app.addContentTypeParser(
    ['text/csv', 'text/plain', 'application/octet-stream'],
    (_request, _payload, done) => done(null),
  );

  app.post(
    '/tuning-sessions/:id/logs',
    {
      ...forTuners,
      ...upload,
      schema: { tags, params: IdParams, querystring: LogQuery, response: { 200: Log, 201: Log } },
    },
    async (request, reply) => {
      const { actor, params, query } = request;
      const file = await uploadedFile(request, query.fileName ?? 'log.csv');
      const { log, visitId } = await recordLog(actor, app.objects, params.id, file);
      if (log.alreadyOnRecord) return reply.code(200).send(log);
      app.announce(actor.workshopId, { noun: 'log', id: log.id, visitId });
      return reply.code(201).send(log);
    },
  );

  app.get(
    '/tuning-sessions/:id/logs',
    { schema: { tags, params: IdParams, response: { 200: LogList } } },
    async ({ actor, params }) => ({ items: await findLogs(actor, params.id) }),
  );

  app.get(
    '/visits/:id/logs',
    { schema: { tags, params: IdParams, response: { 200: LogHeadList } } },
    async ({ actor, params }) => ({ items: await findLogHeads(actor, params.id) }),
  );

  app.get('/logs/:id', { schema: { tags, params: IdParams, response: { 200: Log } } }, ({ actor, params }) =>
    getLog(actor, params.id),
  );

  app.post(
    '/logs/:id/pulls',
    { ...forTuners, schema: { tags, params: IdParams, body: LogConfirm, response: { 201: PullList } } },
    async ({ actor, params, body }, reply) => {
      const { pulls, visitId } = await confirmPulls(actor, params.id, body);
      for (const { id } of pulls) app.announce(actor.workshopId, { noun: 'pull', id, visitId });
      return reply.code(201).send({ items: pulls });
    },
  );

  app.post(
    '/analysis/log',
    { ...computed, ...upload, schema: { tags, response: { 200: LogAnalysis } } },
    async (request) => analyseUpload(request.actor, app.objects, await uploadedFile(request, 'log.csv')),
  );
};
