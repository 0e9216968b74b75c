import { IdParams, SignOff, SignOffNew } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { getSignOff } from './get-sign-off.js';
import { signVisit } from './sign-visit.js';
import '../plumbing/app-parts.js';

const tags = ['sign-off'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };

/** The sign-off of a visit. */
export const signOffRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/visits/:id/sign-off',
    { schema: { tags, params: IdParams, response: { 200: SignOff } } },
    ({ actor, params }) => getSignOff(actor, params.id),
  );

  app.post(
    '/visits/:id/sign-off',
    { ...forTuners, schema: { tags, params: IdParams, body: SignOffNew, response: { 201: SignOff } } },
    async ({ actor, params, body }, reply) => {
      const signOff = await signVisit(actor, params.id, body);
      app.announce(actor.workshopId, { noun: 'sign-off', id: params.id, visitId: params.id });
      return reply.code(201).send(signOff);
    },
  );
};
