import {
  IdParams,
  Log,
  LogFromUpload,
  UploadLook,
  UploadLookBody,
  UploadParams,
  WaitingLogList,
} from '@pullbook/contracts';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { openUploads } from './open-uploads.js';
import { findWaitingLogs } from './find-waiting-logs.js';
import { lookAtUpload } from './look-at-upload.js';
import { takeUploadIn } from './take-upload-in.js';
import '../plumbing/app-parts.js';

const tags = ['uploads'];
const roles = ['owner', 'tuner'] as const;
const forTuners = { config: { roles } };
/** The protocol has its own ways to send a part twice. */
const protocol = { config: { roles, keepsNoReply: true } };
const url = '/api/v1/uploads';
const sweepMs = 6 * 3600 * 1000;

/** Large files in parts, with a way back after a break: the tus protocol 1.0, and what is done with such a file. */
export const uploadsRoutes: FastifyPluginAsyncZod = async (app) => {
  const { objects } = app;
  const uploads = openUploads(objects.uploadsFolder, url);
  const sweep = setInterval(() => void uploads.dropExpired().catch((error) => app.log.error(error)), sweepMs);
  sweep.unref();
  app.addHook('onClose', () => clearInterval(sweep));
  // The parts stay on the wire until the protocol's own server reads them.
  app.addContentTypeParser('application/offset+octet-stream', (_request, _payload, done) => done(null));

  const pass = async (request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> => {
    reply.hijack();
    for (const [name, value] of Object.entries(reply.getHeaders())) {
      if (value !== undefined) reply.raw.setHeader(name, value);
    }
    await uploads.handle(request.actor, request.raw, reply.raw);
    return reply;
  };
  app.post('/uploads', { ...protocol, schema: { tags } }, pass);
  app.route({
    method: ['HEAD', 'PATCH', 'DELETE'],
    url: '/uploads/:uploadId',
    ...protocol,
    schema: { tags, params: UploadParams },
    handler: async (request, reply) => {
      await uploads.requireOwn(request.actor, request.params.uploadId);
      return pass(request, reply);
    },
  });

  app.get('/uploads', { ...forTuners, schema: { tags, response: { 200: WaitingLogList } } }, ({ actor }) =>
    findWaitingLogs(actor, uploads),
  );

  app.post(
    '/uploads/:uploadId/look',
    {
      ...protocol,
      schema: { tags, params: UploadParams, body: UploadLookBody, response: { 200: UploadLook } },
    },
    ({ actor, params, body }) => lookAtUpload(actor, uploads, params.uploadId, body),
  );

  app.post(
    '/tuning-sessions/:id/logs/from-upload',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: LogFromUpload, response: { 200: Log, 201: Log } },
    },
    async ({ actor, params, body }, reply) => {
      const { log, visitId } = await takeUploadIn(actor, { objects, uploads }, params.id, body);
      if (log.alreadyOnRecord) return reply.code(200).send(log);
      app.announce(actor.workshopId, { noun: 'log', id: log.id, visitId });
      return reply.code(201).send(log);
    },
  );
};
