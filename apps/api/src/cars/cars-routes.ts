import { Car, CarChange, CarNew, CarQuery, IdParams, pageOf } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeCar } from './change-car.js';
import { createCar } from './create-car.js';
import { findCars } from './find-cars.js';
import { getCar } from './get-car.js';
import '../plumbing/app-parts.js';

const tags = ['cars'];

export const carsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/cars',
    { schema: { tags, querystring: CarQuery, response: { 200: pageOf(Car) } } },
    ({ actor, query }) => findCars(actor, query),
  );

  app.get(
    '/cars/:id',
    { schema: { tags, params: IdParams, response: { 200: Car } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getCar(actor.db, params.id)),
  );

  app.post(
    '/cars',
    { schema: { tags, body: CarNew, response: { 201: Car } } },
    async ({ actor, body }, reply) => {
      const car = await createCar(actor, body);
      app.announce(actor.workshopId, { noun: 'car', id: car.id, visitId: null });
      return reply.code(201).send(replyRecord(reply, car));
    },
  );

  app.patch(
    '/cars/:id',
    { schema: { tags, params: IdParams, body: CarChange, response: { 200: Car } } },
    async (request, reply) => {
      const { actor, params, body } = request;
      const car = await changeCar(actor, params.id, seenRevision(request), body);
      app.announce(actor.workshopId, { noun: 'car', id: car.id, visitId: null });
      return replyRecord(reply, car);
    },
  );
};
