import { randomUUID } from 'node:crypto';
import path from 'node:path';
import type { NextConfig } from 'next';

/**
 * In production Fastify owns the port and hands Next every path that is not its own. `PULLBOOK_API_URL` is for
 * work on the screens alone: `next dev` then passes the API's paths on to a server that runs elsewhere.
 */
const apiUrl = process.env['PULLBOOK_API_URL'];

/** Names this build, the same in every process that takes part in it: answers kept by another one are not read. */
process.env['PULLBOOK_BUILD'] ??= randomUUID();

const config: NextConfig = {
  env: { PULLBOOK_BUILD: process.env['PULLBOOK_BUILD'] },
  poweredByHeader: false,
  reactStrictMode: true,
  turbopack: { root: path.join(import.meta.dirname, '../..') },
  rewrites: async () =>
    apiUrl === undefined
      ? []
      : ['/api/:path*', '/r/:path*'].map((source) => ({ source, destination: `${apiUrl}${source}` })),
};

export default config;
