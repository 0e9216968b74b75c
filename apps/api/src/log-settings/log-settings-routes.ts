import { LogSettings, LogSettingsChange } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeLogSettings } from './change-log-settings.js';
import { getLogSettings } from './get-log-settings.js';
import '../plumbing/app-parts.js';

const tags = ['log settings'];
const forOwners = { config: { roles: ['owner'] as const } };

/** Filter, thresholds and definitions that the workshop's logs are analysed with. */
export const logSettingsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get('/log-settings', { schema: { tags, response: { 200: LogSettings } } }, async ({ actor }, reply) =>
    replyRecord(reply, await getLogSettings(actor.db, actor.workshopId)),
  );

  app.patch(
    '/log-settings',
    { ...forOwners, schema: { tags, body: LogSettingsChange, response: { 200: LogSettings } } },
    async (request, reply) => {
      const { actor, body } = request;
      const settings = await changeLogSettings(actor, seenRevision(request), body.changes);
      app.announce(actor.workshopId, { noun: 'log-setting', id: actor.workshopId, visitId: null });
      return replyRecord(reply, settings);
    },
  );
};
