import {
  IdParams,
  Member,
  MemberChange,
  MemberNew,
  PageQuery,
  Token,
  TokenMade,
  TokenNew,
  Workshop,
  WorkshopChange,
  pageOf,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeMember } from './change-member.js';
import { changeWorkshop } from './change-workshop.js';
import { createMember } from './create-member.js';
import { createToken } from './create-token.js';
import { findTeam } from './find-team.js';
import { findTokens } from './find-tokens.js';
import { getWorkshop } from './get-workshop.js';
import { revokeToken } from './revoke-token.js';
import '../plumbing/app-parts.js';

const tags = ['team'];
const forOwner = { config: { roles: ['owner'] as const } };

/** The team, its programs' tokens, and the workshop's own rules. */
export const teamRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/team',
    { schema: { tags, querystring: PageQuery, response: { 200: pageOf(Member) } } },
    ({ actor, query }) => findTeam(actor, query),
  );

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

  app.get(
    '/tokens',
    { schema: { tags, querystring: PageQuery, response: { 200: pageOf(Token) } } },
    ({ actor, query }) => findTokens(actor, query),
  );

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
