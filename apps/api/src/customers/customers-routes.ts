import { Customer, CustomerChange, CustomerNew, CustomerQuery, IdParams, pageOf } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeCustomer } from './change-customer.js';
import { createCustomer } from './create-customer.js';
import { findCustomers } from './find-customers.js';
import { getCustomer } from './get-customer.js';
import '../plumbing/app-parts.js';

const tags = ['customers'];

export const customersRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/customers',
    { schema: { tags, querystring: CustomerQuery, response: { 200: pageOf(Customer) } } },
    ({ actor, query }) => findCustomers(actor, query),
  );

  app.get(
    '/customers/:id',
    { schema: { tags, params: IdParams, response: { 200: Customer } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getCustomer(actor.db, params.id)),
  );

  app.post(
    '/customers',
    { schema: { tags, body: CustomerNew, response: { 201: Customer } } },
    async ({ actor, body }, reply) => {
      const customer = await createCustomer(actor, body);
      app.announce(actor.workshopId, { noun: 'customer', id: customer.id, visitId: null });
      return reply.code(201).send(replyRecord(reply, customer));
    },
  );

  app.patch(
    '/customers/:id',
    { schema: { tags, params: IdParams, body: CustomerChange, response: { 200: Customer } } },
    async (request, reply) => {
      const { actor, params, body } = request;
      const customer = await changeCustomer(actor, params.id, seenRevision(request), body);
      app.announce(actor.workshopId, { noun: 'customer', id: customer.id, visitId: null });
      return replyRecord(reply, customer);
    },
  );
};
