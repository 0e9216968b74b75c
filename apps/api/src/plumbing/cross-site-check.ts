import type { FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { DomainError } from './domain-error.js';
import './app-parts.js';

const readingMethods = new Set(['GET', 'HEAD', 'OPTIONS']);
const loopbackNames = new Set(['localhost', '127.0.0.1', '[::1]']);

/**
 * Keeps other sites' pages from writing in the name of somebody who is signed in. Browsers say where a write comes
 * from; programs that send a Bearer token say nothing and carry no cookie.
 */
export const crossSiteCheck = fp(
  async (app) => {
    app.addHook('onRequest', async (request) => {
      if (app.mode === 'demo') refuseForeignName(request);
      if (!readingMethods.has(request.method)) refuseForeignOrigin(request);
    });
  },
  { name: 'cross-site-check' },
);

/** A site elsewhere may give its own name this machine's address; the practice password would be no hindrance. */
function refuseForeignName(request: FastifyRequest): void {
  if (loopbackNames.has(request.hostname.toLowerCase())) return;
  throw new DomainError('not-allowed', 'the demo workshop answers under this machine’s own names only');
}

function refuseForeignOrigin(request: FastifyRequest): void {
  const { origin, host, 'sec-fetch-site': site, 'x-forwarded-host': forwarded } = request.headers;
  // A proxy says by which name it was asked. No page elsewhere can say it: browsers ask first before they send it.
  const askedFor = typeof forwarded === 'string' ? forwarded : host;
  const fromElsewhere = site !== undefined && site !== 'same-origin' && site !== 'none';
  if (fromElsewhere || (origin !== undefined && hostOf(origin) !== askedFor)) {
    throw new DomainError('not-allowed', 'a page of another site may not write here');
  }
}

function hostOf(origin: string): string | null {
  return URL.canParse(origin) ? new URL(origin).host : null;
}
