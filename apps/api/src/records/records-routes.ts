import { AuditPage, AuditQuery } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { findRecords } from './find-records.js';
import '../plumbing/app-parts.js';

export const recordsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/records',
    {
      config: { roles: ['owner', 'tuner'] },
      schema: { tags: ['records'], querystring: AuditQuery, response: { 200: AuditPage } },
    },
    ({ actor, query }) => findRecords(actor, query),
  );
};
