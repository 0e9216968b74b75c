import {
  IdParams,
  Report,
  ReportLink,
  ReportLinkList,
  ReportLinkMade,
  ReportParams,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { findReportLinks } from './find-report-links.js';
import { makeReportLink } from './make-report-link.js';
import { readReport } from './read-report.js';
import { revokeReportLink } from './revoke-report-link.js';
import '../plumbing/app-parts.js';

const tags = ['reports'];

/** Report links of a visit, and the report behind one. */
export const reportsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/visits/:id/report',
    { schema: { tags, params: IdParams, response: { 200: ReportLinkList } } },
    async ({ actor, params }) => ({ items: await findReportLinks(actor, params.id) }),
  );

  app.post(
    '/visits/:id/report',
    // The reply shows the link's secret, so no copy of it is kept.
    { config: { keepsNoReply: true }, schema: { tags, params: IdParams, response: { 201: ReportLinkMade } } },
    async ({ actor, params }, reply) => {
      const link = await makeReportLink(actor, params.id);
      app.announce(actor.workshopId, { noun: 'report-link', id: link.id, visitId: link.visitId });
      return reply.code(201).header('cache-control', 'no-store').send(link);
    },
  );

  app.post(
    '/report-links/:id/revoke',
    { schema: { tags, params: IdParams, response: { 200: ReportLink } } },
    async ({ actor, params }) => {
      const link = await revokeReportLink(actor, params.id);
      app.announce(actor.workshopId, { noun: 'report-link', id: link.id, visitId: link.visitId });
      return link;
    },
  );

  app.get(
    '/reports/:token',
    { config: { public: true }, schema: { tags, params: ReportParams, response: { 200: Report } } },
    async ({ params }, reply) => {
      reply.header('cache-control', 'no-store').header('x-robots-tag', 'noindex, nofollow');
      return readReport(app.database.client, params.token);
    },
  );
};
