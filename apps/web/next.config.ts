import path from 'node:path';
import type { NextConfig } from 'next';

/**
 * In production Fastify owns the port and hands Next every path that is not its own. `PULLBOOK_API_URL` is for
 * work on the screens alone: `next dev` then passes the API's paths on to a server that runs elsewhere.
 */
const apiUrl = process.env['PULLBOOK_API_URL'];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  turbopack: { root: path.join(import.meta.dirname, '../..') },
  rewrites: async () =>
    apiUrl === undefined
      ? []
      : ['/api/:path*', '/r/:path*'].map((source) => ({ source, destination: `${apiUrl}${source}` })),
};

export default config;
