import { IdParams, PresetOutlook } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { findOutlook } from './find-outlook.js';
import '../plumbing/app-parts.js';

/** How presets have aged, and what they will do in other conditions. */
export const outlookRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/presets/:id/outlook',
    { schema: { tags: ['outlook'], params: IdParams, response: { 200: PresetOutlook } } },
    ({ actor, params }) => findOutlook(actor, params.id),
  );
};
