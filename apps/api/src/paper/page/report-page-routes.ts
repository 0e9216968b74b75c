import { PaperQuery, type Report } from '@pullbook/contracts';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { DomainError } from '../../plumbing/domain-error.js';
import { statusOfCode } from '../../plumbing/status-of-code.js';
import { readReport } from '../../reports/read-report.js';
import { choosePaper } from '../choose-paper.js';
import { originOf, sendPdf } from '../paper-reply.js';
import { reportPdf } from '../report-pdf.js';
import { refusalPage } from './page.js';
import { readPageFiles } from './page-files.js';
import { reportPage } from './report-page.js';
import '../../plumbing/app-parts.js';

const policy = [
  "default-src 'none'",
  "style-src 'self'",
  "font-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');
const YEAR_S = 365 * 24 * 3600;
const TokenParams = z.object({ token: z.string() });

const refusals: Readonly<Record<number, { title: string; text: string }>> = {
  400: {
    title: 'This address is not quite right',
    text: 'Something at its end is not understood here. Open the link again as it was sent to you.',
  },
  404: {
    title: 'There is no report here',
    text: 'The address may have been cut short on its way to you. Open the link again from the message, or ask the workshop for a new one.',
  },
  410: {
    title: 'This report was withdrawn',
    text: 'The workshop has withdrawn this link, often because a newer report took its place. Ask there for the current one. Until then, use your car as you were told at hand-over.',
  },
};
const trouble = {
  title: 'The report cannot be shown just now',
  text: 'This is not your fault. Try again in a few minutes; if it stays like this, call the workshop.',
};

/** The customer's report at `/r/{token}` as a page, and at `/r/{token}.pdf` as a file; no sign-in, no script. */
export const reportPageRoutes: FastifyPluginAsyncZod = async (app) => {
  const files = readPageFiles();
  for (const file of files.all) {
    app.get(file.url, { config: { public: true }, schema: { hide: true } }, (_request, reply) =>
      reply
        .type(file.type)
        .header('cache-control', `public, max-age=${YEAR_S}, immutable`)
        .header('cross-origin-resource-policy', 'same-origin')
        .send(file.body),
    );
  }
  app.addHook('onRequest', async (request, reply) => {
    if (request.url.startsWith('/r/')) guard(reply);
  });
  app.setErrorHandler((error, request, reply) => {
    const status = statusOf(error);
    if (status >= 500) request.log.error(error);
    const refusal = refusals[status] ?? trouble;
    return sendPage(reply.code(status), refusalPage(refusal, files.style.url));
  });
  app.get(
    '/r/:token',
    {
      config: { public: true },
      schema: { hide: true, params: TokenParams, querystring: PaperQuery },
    },
    async (request, reply) => {
      const token = request.params.token.replace(/\.pdf$/, '');
      const report = await readReport(app.database.client, token);
      const choice = choosePaper(request.query, report);
      if (token !== request.params.token) return sendReportPdf(request, reply, report, { token, choice });
      const place = { path: `/r/${token}`, styleUrl: files.style.url, pressure: choice.pressure };
      return sendPage(reply, reportPage(report, place));
    },
  );
};

async function sendReportPdf(
  request: FastifyRequest,
  reply: FastifyReply,
  report: Report,
  { token, choice }: { readonly token: string; readonly choice: Parameters<typeof reportPdf>[2] },
): Promise<FastifyReply> {
  const address = { url: `${originOf(request)}/r/${token}`, purpose: 'QR code that opens this report' };
  const name = `preset-report-${report.visitNumber}-${report.plate}`;
  return sendPdf(reply, await reportPdf(report, address, choice), name);
}

/** Not to be kept, found by search engines, or told to others by way of a link followed from here. */
function guard(reply: FastifyReply): void {
  reply
    .header('cache-control', 'private, no-store')
    .header('x-robots-tag', 'noindex, nofollow')
    .header('referrer-policy', 'no-referrer')
    .header('content-security-policy', policy);
}

function sendPage(reply: FastifyReply, page: string): FastifyReply {
  return reply.type('text/html; charset=utf-8').send(page);
}

function statusOf(error: unknown): number {
  return error instanceof DomainError ? statusOfCode[error.code] : 500;
}
