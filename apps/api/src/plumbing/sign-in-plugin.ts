import type { Role } from '@pullbook/contracts';
import { scopeToWorkshop, type Member, type Workshop } from '@pullbook/database';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { Actor } from './actor.js';
import { DomainError } from './domain-error.js';
import { hashSecret } from './secrets.js';
import { readSignInCookie } from './sign-in-cookie.js';
import './app-parts.js';

/** Finds out who sends each request, and whether the route is theirs. Whoever is not named is refused. */
export const signIn = fp(
  async (app) => {
    app.decorateRequest('signedIn', null);
    app.decorateRequest('actor', {
      getter(this: FastifyRequest) {
        if (this.signedIn === null) throw new DomainError('not-signed-in', 'sign in first');
        return this.signedIn;
      },
    });
    app.addHook('onRequest', async (request) => {
      if (request.is404 || isOpenToAll(request)) return;
      request.signedIn = await findActor(app, request);
      const { roles } = request.routeOptions.config;
      if (roles && !roles.includes(request.actor.role)) {
        throw new DomainError('not-allowed', refusal(request.actor.role, roles));
      }
    });
  },
  { name: 'sign-in', dependencies: ['@fastify/cookie'] },
);

function isOpenToAll(request: FastifyRequest): boolean {
  const { config, url = '' } = request.routeOptions;
  return config.public === true || url.startsWith('/api/docs');
}

const roleWords: Record<Role, string> = { owner: 'the owner', tuner: 'a tuner', desk: 'the front desk' };

function refusal(role: Role, roles: readonly Role[]): string {
  const may = roles.map((allowed) => roleWords[allowed]).join(' or ');
  return `this is for ${may}; you are signed in as ${roleWords[role]}`;
}

type KnownMember = Member & { workshop: Workshop };

async function findActor(app: FastifyInstance, request: FastifyRequest): Promise<Actor | null> {
  const bearer = /^Bearer (\S+)$/i.exec(request.headers.authorization ?? '')?.[1];
  if (bearer !== undefined) return admit(app, await findByToken(app, bearer));
  const cookie = readSignInCookie(request);
  return cookie === undefined ? null : admit(app, await findByCookie(app, cookie));
}

async function findByCookie(app: FastifyInstance, secret: string): Promise<KnownMember | null> {
  const found = await app.database.client.signIn.findUnique({
    where: { secretHash: hashSecret(secret) },
    include: { member: { include: { workshop: true } } },
  });
  return found && found.expiresAt > app.now() ? found.member : null;
}

/** How exactly the last use of a token is noted: a write for every request would be too dear. */
const lastUseMs = 60_000;

async function findByToken(app: FastifyInstance, secret: string): Promise<KnownMember | null> {
  const found = await app.database.client.apiToken.findUnique({
    where: { secretHash: hashSecret(secret) },
    include: { member: { include: { workshop: true } } },
  });
  if (!found || found.revokedAt) return null;
  const now = app.now();
  if (!found.lastUsedAt || now.getTime() - found.lastUsedAt.getTime() > lastUseMs) {
    await app.database.client.apiToken.update({ where: { id: found.id }, data: { lastUsedAt: now } });
  }
  return found.member;
}

/** Practice accounts have a password that everybody knows: they count in demo mode alone. */
function admit(app: FastifyInstance, member: KnownMember | null): Actor | null {
  if (!member?.active || (member.workshop.isDemo && app.mode !== 'demo')) return null;
  return {
    memberId: member.id,
    name: member.name,
    role: member.role as Role,
    workshopId: member.workshopId,
    db: scopeToWorkshop(app.database.client, member.workshopId),
    now: app.now,
  };
}
