import { Board, BoardQuery } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { getBoard } from './get-board.js';
import '../plumbing/app-parts.js';

export const boardRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/board',
    { schema: { tags: ['board'], querystring: BoardQuery, response: { 200: Board } } },
    ({ actor, query }) => getBoard(actor, query),
  );
};
