import {
  IdParams,
  TraceAnswer,
  TraceCutQuery,
  TraceTileParams,
  type TraceTileParams as TileAddress,
} from '@pullbook/contracts';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { Readable } from 'node:stream';
import { gunzipSync } from 'node:zlib';
import { cutLog } from './cut-log.js';
import { getTraceIndex } from './get-trace-index.js';
import { getTraceTile } from './get-trace-tile.js';
import '../plumbing/app-parts.js';

const tags = ['traces'];

/** The traces of a log: what there is, its samples at any fineness, and a stretch of it as CSV. Any member may. */
export const tracesRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/logs/:id/traces',
    { schema: { tags, params: IdParams, response: { 200: TraceAnswer, 202: TraceAnswer } } },
    async ({ actor, params }, reply) => {
      const answer = await getTraceIndex(actor, app.objects, params.id);
      if (answer.state === 'ready') return answer;
      return reply.code(202).header('retry-after', '1').send(answer);
    },
  );

  app.get(
    '/logs/:id/traces/:build/:channel/:level/:tile',
    { schema: { tags, params: TraceTileParams, produces: ['application/octet-stream'] } },
    async (request, reply) => {
      const etag = etagOf(request.params);
      const tile = await getTraceTile(request.actor, app.objects, request.params);
      reply.header('etag', etag).header('cache-control', 'private, max-age=31536000, immutable');
      if (request.headers['if-none-match'] === etag) return reply.code(304).send();
      return sendPacked(request, reply, tile);
    },
  );

  app.get(
    '/logs/:id/cut.csv',
    {
      schema: { tags, params: IdParams, querystring: TraceCutQuery, produces: ['text/csv'] },
    },
    async ({ actor, params, query }, reply) => {
      const { fileName, pieces } = await cutLog(actor, app.objects, params.id, query);
      return reply
        .type('text/csv; charset=utf-8; header=present')
        .header('content-disposition', `attachment; filename="${fileName}"`)
        .header('cache-control', 'private, no-store')
        .send(Readable.from(pieces));
    },
  );
};

function etagOf({ build, channel, level, tile }: TileAddress): string {
  return `"${build}-${channel}-${level}-${tile}"`;
}

/** Tiles lie packed and go out so; whoever cannot unpack gets them unpacked. */
function sendPacked(request: FastifyRequest, reply: FastifyReply, packed: Buffer): FastifyReply {
  const takesGzip = /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));
  reply.type('application/octet-stream').header('vary', 'accept-encoding');
  if (!takesGzip) return reply.send(gunzipSync(packed));
  return reply.header('content-encoding', 'gzip').send(packed);
}
