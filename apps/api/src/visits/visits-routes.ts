import {
  IdParams,
  Intake,
  IntakeNew,
  LookalikeQuery,
  Lookalikes,
  pageOf,
  StageChange,
  Visit,
  VisitChange,
  VisitNew,
  VisitQuery,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeVisit } from './change-visit.js';
import { createVisit } from './create-visit.js';
import { findLookalikes } from './find-lookalikes.js';
import { findVisits } from './find-visits.js';
import { getVisit } from './get-visit.js';
import { moveVisit } from './move-visit.js';
import { takeIn } from './take-in.js';
import '../plumbing/app-parts.js';

const tags = ['visits'];

/** Visits and their stages, and the intake that begins them. */
export const visitsRoutes: FastifyPluginAsyncZod = async (app) => {
  const announce = (workshopId: string, id: string): void =>
    app.announce(workshopId, { noun: 'visit', id, visitId: id });

  app.get(
    '/visits',
    { schema: { tags, querystring: VisitQuery, response: { 200: pageOf(Visit) } } },
    ({ actor, query }) => findVisits(actor, query),
  );

  app.get(
    '/visits/:id',
    { schema: { tags, params: IdParams, response: { 200: Visit } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getVisit(actor.db, params.id)),
  );

  app.post(
    '/visits',
    { schema: { tags, body: VisitNew, response: { 201: Visit } } },
    async ({ actor, body }, reply) => {
      const visit = await createVisit(actor, body);
      announce(actor.workshopId, visit.id);
      return reply.code(201).send(replyRecord(reply, visit));
    },
  );

  app.patch(
    '/visits/:id',
    { schema: { tags, params: IdParams, body: VisitChange, response: { 200: Visit } } },
    async (request, reply) => {
      const { actor, params, body } = request;
      const visit = await changeVisit(actor, params.id, seenRevision(request), body);
      announce(actor.workshopId, visit.id);
      return replyRecord(reply, visit);
    },
  );

  app.post(
    '/visits/:id/stage',
    { schema: { tags, params: IdParams, body: StageChange, response: { 200: Visit } } },
    async (request, reply) => {
      const { actor, params, body } = request;
      const visit = await moveVisit(actor, params.id, seenRevision(request), body);
      announce(actor.workshopId, visit.id);
      return replyRecord(reply, visit);
    },
  );

  app.post(
    '/intakes',
    { schema: { tags, body: IntakeNew, response: { 201: Intake } } },
    async ({ actor, body }, reply) => {
      const intake = await takeIn(actor, body);
      announce(actor.workshopId, intake.visitId);
      return reply.code(201).send(intake);
    },
  );

  app.get(
    '/lookalikes',
    { schema: { tags, querystring: LookalikeQuery, response: { 200: Lookalikes } } },
    ({ actor, query }) => findLookalikes(actor, query),
  );
};
