import { SearchAnswer, SearchQuery } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { searchBook } from './search-book.js';
import '../plumbing/app-parts.js';

export const searchRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/search',
    { schema: { tags: ['search'], querystring: SearchQuery, response: { 200: SearchAnswer } } },
    ({ actor, query }) => searchBook(actor, query.q),
  );
};
