import {
  IdParams,
  Member,
  MemberChange,
  MemberNew,
  Token,
  TokenMade,
  TokenNew,
  Workshop,
  WorkshopChange,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeMember, createMember, findTeam } from './team.js';
import { createToken, findTokens, revokeToken } from './tokens.js';
import { changeWorkshop, getWorkshop } from './workshop.js';
import '../plumbing/app-parts.js';

const tags = ['team'];
const forOwner = { config: { roles: ['owner'] as const } };
const Team = z.object({ items: z.array(Member) });
const Tokens = z.object({ items: z.array(Token) });

/** The team, its programs' tokens, and the workshop's own rules. */
export const teamRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get('/team', { schema: { tags, response: { 200: Team } } }, async (request) => ({
    items: await findTeam(request.actor),
  }));

  app.post(
    '/team',
    { ...forOwner, schema: { tags, body: MemberNew, response: { 201: Member } } },
    async (request, reply) =>
      reply.code(201).send(replyRecord(reply, await createMember(request.actor, request.body))),
  );

  app.patch(
    '/team/:id',
    { ...forOwner, schema: { tags, params: IdParams, body: MemberChange, response: { 200: Member } } },
    async (request, reply) => {
      const { actor, params, body } = request;
      return replyRecord(reply, await changeMember(actor, params.id, seenRevision(request), body));
    },
  );

  app.get('/tokens', { schema: { tags, response: { 200: Tokens } } }, async (request) => ({
    items: await findTokens(request.actor),
  }));

  app.post(
    '/tokens',
    { config: { keepsNoReply: true }, schema: { tags, body: TokenNew, response: { 201: TokenMade } } },
    async (request, reply) => reply.code(201).send(await createToken(request.actor, request.body)),
  );

  app.delete('/tokens/:id', { schema: { tags, params: IdParams, response: { 200: Token } } }, (request) =>
    revokeToken(request.actor, request.params.id),
  );

  app.get('/workshop', { schema: { tags, response: { 200: Workshop } } }, async (request, reply) =>
    replyRecord(reply, await getWorkshop(request.actor)),
  );

  app.patch(
    '/workshop',
    { ...forOwner, schema: { tags, body: WorkshopChange, response: { 200: Workshop } } },
    async (request, reply) =>
      replyRecord(reply, await changeWorkshop(request.actor, seenRevision(request), request.body)),
  );
};
