import {
  Controller,
  ControllerChange,
  ControllerNew,
  ControllerQuery,
  IdParams,
  pageOf,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeController } from './change-controller.js';
import { createController } from './create-controller.js';
import { findControllers } from './find-controllers.js';
import { getController } from './get-controller.js';
import '../plumbing/app-parts.js';

const tags = ['controllers'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };

export const controllersRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/controllers',
    { schema: { tags, querystring: ControllerQuery, response: { 200: pageOf(Controller) } } },
    ({ actor, query }) => findControllers(actor, query),
  );

  app.get(
    '/controllers/:id',
    { schema: { tags, params: IdParams, response: { 200: Controller } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getController(actor.db, params.id)),
  );

  app.post(
    '/controllers',
    { ...forTuners, schema: { tags, body: ControllerNew, response: { 201: Controller } } },
    async ({ actor, body }, reply) => {
      const controller = await createController(actor, body);
      app.announce(actor.workshopId, { noun: 'controller', id: controller.id, visitId: null });
      return reply.code(201).send(replyRecord(reply, controller));
    },
  );

  app.patch(
    '/controllers/:id',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: ControllerChange, response: { 200: Controller } },
    },
    async (request, reply) => {
      const { actor, params, body } = request;
      const controller = await changeController(actor, params.id, seenRevision(request), body);
      app.announce(actor.workshopId, { noun: 'controller', id: controller.id, visitId: null });
      return replyRecord(reply, controller);
    },
  );
};
