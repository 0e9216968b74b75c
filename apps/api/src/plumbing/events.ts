import type { ChangeEvent } from '@pullbook/contracts';
import type { FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import './app-parts.js';

const heartbeatMs = 20_000;

/** Server-sent events at /events: which record changed; who is interested fetches it anew. */
export const events = fp(
  async (app) => {
    const listeners = new Map<string, Set<FastifyReply>>();
    let lastId = 0;

    app.decorate('announce', (workshopId: string, event: ChangeEvent) => {
      lastId += 1;
      const text = `id: ${lastId}\nevent: change\ndata: ${JSON.stringify(event)}\n\n`;
      for (const reply of listeners.get(workshopId) ?? []) reply.raw.write(text);
    });

    app.get('/api/v1/events', { schema: { hide: true } }, (request, reply) => {
      const { workshopId } = request.actor;
      const ours = listeners.get(workshopId) ?? new Set();
      listeners.set(workshopId, ours.add(reply));
      openStream(request, reply, () => ours.delete(reply));
    });

    const heartbeat = setInterval(() => {
      for (const reply of [...listeners.values()].flatMap((ours) => [...ours]))
        reply.raw.write(': still here\n\n');
    }, heartbeatMs);
    heartbeat.unref();
    // Before the server waits for open requests to end: these would never end by themselves.
    app.addHook('preClose', async () => {
      clearInterval(heartbeat);
      for (const reply of [...listeners.values()].flatMap((ours) => [...ours])) reply.raw.end();
    });
  },
  { name: 'events', dependencies: ['sign-in'] },
);

function openStream(request: FastifyRequest, reply: FastifyReply, onClose: () => void): void {
  reply.hijack();
  for (const [name, value] of Object.entries(reply.getHeaders())) {
    if (value !== undefined) reply.raw.setHeader(name, value);
  }
  reply.raw.writeHead(200, {
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-cache, no-transform',
    'x-accel-buffering': 'no',
  });
  reply.raw.write('retry: 2000\n\n');
  request.raw.on('close', onClose);
}
