import type { FastifyReply } from 'fastify';
import fp from 'fastify-plugin';
import type { IncomingMessage, ServerResponse } from 'node:http';
import './app-parts.js';

/** Answers one request for the dashboard; Next's request handler is one. */
export type DashboardHandler = (request: IncomingMessage, response: ServerResponse) => Promise<void>;

/** Next puts small scripts of its own into its pages, so those must be let run; nothing comes from elsewhere. */
const pagePolicy = [
  "default-src 'self'",
  "script-src 'self' 'unsafe-inline'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

/** Hands every path that is not the API's own to the dashboard, in the same process. */
export const dashboard = fp<{ handler: DashboardHandler }>(
  async (app, { handler }) => {
    app.route({
      method: ['GET', 'HEAD'],
      url: '/*',
      config: { public: true },
      schema: { hide: true },
      handler: async (request, reply) => {
        if (request.url === '/api' || request.url.startsWith('/api/')) {
          reply.callNotFound();
          return reply;
        }
        reply.header('content-security-policy', pagePolicy);
        reply.hijack();
        passHeaders(reply);
        await handler(request.raw, reply.raw);
        return reply;
      },
    });
  },
  { name: 'dashboard', dependencies: ['sign-in', 'security-headers'] },
);

function passHeaders(reply: FastifyReply): void {
  for (const [name, value] of Object.entries(reply.getHeaders())) {
    if (value !== undefined) reply.raw.setHeader(name, value);
  }
}
