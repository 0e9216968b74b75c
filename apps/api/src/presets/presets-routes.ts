import {
  IdParams,
  Preset,
  PresetChange,
  PresetNew,
  PresetQuery,
  PresetRevision,
  pageOf,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changePreset } from './change-preset.js';
import { createPreset } from './create-preset.js';
import { findPresetRevisions } from './find-preset-revisions.js';
import { findPresets } from './find-presets.js';
import { getPreset } from './get-preset.js';
import '../plumbing/app-parts.js';

const tags = ['presets'];
const PresetPage = pageOf(Preset).meta({ id: 'PresetPage' });
const RevisionPage = pageOf(PresetRevision).meta({ id: 'PresetRevisionPage' });

/** The presets of a car and their revisions. */
export const presetsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/cars/:id/presets',
    { schema: { tags, params: IdParams, querystring: PresetQuery, response: { 200: PresetPage } } },
    ({ actor, params, query }) => findPresets(actor, params.id, query),
  );

  app.post(
    '/cars/:id/presets',
    { schema: { tags, params: IdParams, body: PresetNew, response: { 201: Preset } } },
    async ({ actor, params, body }, reply) => {
      const preset = await createPreset(actor, params.id, body);
      app.announce(actor.workshopId, { noun: 'preset', id: preset.id, visitId: null });
      return reply.code(201).send(replyRecord(reply, preset));
    },
  );

  app.get(
    '/presets/:id',
    { schema: { tags, params: IdParams, response: { 200: Preset } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getPreset(actor, params.id)),
  );

  app.patch(
    '/presets/:id',
    { schema: { tags, params: IdParams, body: PresetChange, response: { 200: Preset } } },
    async (request, reply) => {
      const { actor, params, body } = request;
      const preset = await changePreset(actor, params.id, seenRevision(request), body);
      app.announce(actor.workshopId, { noun: 'preset', id: preset.id, visitId: null });
      return replyRecord(reply, preset);
    },
  );

  app.get(
    '/presets/:id/revisions',
    { schema: { tags, params: IdParams, response: { 200: RevisionPage } } },
    async ({ actor, params }) => ({ items: await findPresetRevisions(actor, params.id), nextCursor: null }),
  );
};
