import { CarCeiling, CarCompressorMap, CompressorMapNew, EngineSheet, IdParams } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { getCarCeiling } from './get-car-ceiling.js';
import { getCompressorMap } from './get-compressor-map.js';
import { getEngineSheet } from './get-engine-sheet.js';
import { removeCompressorMap } from './remove-compressor-map.js';
import { setCompressorMap } from './set-compressor-map.js';
import '../plumbing/app-parts.js';

const tags = ['engine'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };

/** Engine data of a car: what follows from them, and the map of its compressor. */
export const engineRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/cars/:id/engine',
    { ...forTuners, schema: { tags, params: IdParams, response: { 200: EngineSheet } } },
    ({ actor, params }) => getEngineSheet(actor, params.id),
  );

  app.get(
    '/cars/:id/ceiling',
    { schema: { tags, params: IdParams, response: { 200: CarCeiling } } },
    ({ actor, params }) => getCarCeiling(actor, params.id),
  );

  app.get(
    '/cars/:id/compressor-map',
    { ...forTuners, schema: { tags, params: IdParams, response: { 200: CarCompressorMap } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getCompressorMap(actor.db, params.id)),
  );

  app.put(
    '/cars/:id/compressor-map',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: CompressorMapNew, response: { 200: CarCompressorMap } },
    },
    async (request, reply) => {
      const { actor, params, body } = request;
      const map = await setCompressorMap(actor, params.id, seenRevision(request), body);
      app.announce(actor.workshopId, { noun: 'car', id: params.id, visitId: null });
      return replyRecord(reply, map);
    },
  );

  app.delete(
    '/cars/:id/compressor-map',
    { ...forTuners, schema: { tags, params: IdParams, response: { 204: z.null() } } },
    async (request, reply) => {
      const { actor, params } = request;
      await removeCompressorMap(actor, params.id, seenRevision(request));
      app.announce(actor.workshopId, { noun: 'car', id: params.id, visitId: null });
      return reply.code(204).send(null);
    },
  );
};
