import { SignOffChecklist, SignOffChecklistChange } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeChecklist } from './change-checklist.js';
import { readChecklist } from './read-checklist.js';
import '../plumbing/app-parts.js';

const tags = ['sign-off'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };

/** What every sign-off of the workshop asks for. */
export const checklistsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/sign-off-checklist',
    { schema: { tags, response: { 200: SignOffChecklist } } },
    async ({ actor }, reply) => replyRecord(reply, await readChecklist(actor.db, actor.workshopId)),
  );

  app.put(
    '/sign-off-checklist',
    { ...forTuners, schema: { tags, body: SignOffChecklistChange, response: { 200: SignOffChecklist } } },
    async (request, reply) => {
      const { actor, body } = request;
      const checklist = await changeChecklist(actor, seenRevision(request), body);
      app.announce(actor.workshopId, { noun: 'checklist', id: actor.workshopId, visitId: null });
      return replyRecord(reply, checklist);
    },
  );
};
