import { FirstOwner, Health, Me, MeChange, Setup, SignIn } from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { clearSignInCookie, readSignInCookie, setSignInCookie } from '../plumbing/sign-in-cookie.js';
import { signInLimit } from '../plumbing/sign-in-limit.js';
import { becomeFirstOwner } from './become-first-owner.js';
import { changeMe } from './change-me.js';
import { getHealth } from './get-health.js';
import { getMe } from './get-me.js';
import { getSetup } from './get-setup.js';
import { signInMember } from './sign-in-member.js';
import { signOutMember } from './sign-out-member.js';
import { teamRoutes } from './team-routes.js';
import '../plumbing/app-parts.js';

const tags = ['people'];
const open = { config: { public: true } } as const;

/** Signing in and out, oneself, and what a fresh book needs first. */
export const peopleRoutes: FastifyPluginAsyncZod<{ firstOwnerCode: string | null }> = async (
  app,
  options,
) => {
  const door = { client: app.database.client, mode: app.mode, now: app.now };
  const limitPerson = signInLimit(app, (request) => (request.body as SignIn).email.toLowerCase());
  const limitCode = signInLimit(app, () => 'first owner');

  app.post(
    '/sign-in',
    { ...open, schema: { tags, body: SignIn, response: { 200: Me } } },
    async (request, reply) => {
      const { me, secret } = await limitPerson(request, () => signInMember(door, request.body));
      setSignInCookie(request, reply, secret);
      return me;
    },
  );

  app.post('/sign-out', { schema: { tags, response: { 204: z.null() } } }, async (request, reply) => {
    const secret = readSignInCookie(request);
    if (secret !== undefined) await signOutMember(request.actor, secret);
    clearSignInCookie(request, reply);
    return reply.code(204).send(null);
  });

  app.get('/me', { schema: { tags, response: { 200: Me } } }, (request) => getMe(request.actor));

  app.patch('/me', { schema: { tags, body: MeChange, response: { 200: Me } } }, (request) =>
    changeMe(request.actor, request.body),
  );

  app.get('/setup', { ...open, schema: { tags, response: { 200: Setup } } }, () => getSetup(door));

  app.post(
    '/first-owner',
    { ...open, schema: { tags, body: FirstOwner, response: { 201: Me } } },
    async (request, reply) => {
      const book = { ...door, code: options.firstOwnerCode };
      const { me, secret } = await limitCode(request, () => becomeFirstOwner(book, request.body));
      setSignInCookie(request, reply, secret);
      return reply.code(201).send(me);
    },
  );

  app.get(
    '/health',
    { ...open, schema: { tags, response: { 200: Health, 503: Health } } },
    async (_, reply) => {
      const health = await getHealth(app.database);
      return reply.code(health.status === 'ok' ? 200 : 503).send(health);
    },
  );

  await app.register(teamRoutes);
};
