import { IdParams, PaperQuery } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { readJobSheet } from '../reports/read-job-sheet.js';
import { readVisitReport } from '../reports/read-visit-report.js';
import { choosePaper } from './choose-paper.js';
import { jobSheetPdf } from './job-sheet-pdf.js';
import { originOf, sendPdf } from './paper-reply.js';
import { reportPdf } from './report-pdf.js';
import '../plumbing/app-parts.js';

const tags = ['paper'];
const schema = { tags, params: IdParams, querystring: PaperQuery, produces: ['application/pdf'] };

/** What is printed: the job sheet of a visit, and its preset report. Any signed-in member may. */
export const paperRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get('/visits/:id/job-sheet.pdf', { schema }, async (request, reply) => {
    const sheet = await readJobSheet(request.actor, request.params.id, originOf(request));
    const choice = choosePaper(request.query, sheet);
    return sendPdf(reply, await jobSheetPdf(sheet, choice), `job-sheet-${sheet.visitNumber}-${sheet.plate}`);
  });

  app.get('/visits/:id/report.pdf', { schema }, async (request, reply) => {
    const { id } = request.params;
    const report = await readVisitReport(request.actor, id);
    const choice = choosePaper(request.query, report);
    const address = {
      url: `${originOf(request)}/visits/${id}`,
      purpose: 'QR code for the workshop: opens the visit',
    };
    const name = `preset-report-${report.visitNumber}-${report.plate}`;
    return sendPdf(reply, await reportPdf(report, address, choice), name);
  });
};
