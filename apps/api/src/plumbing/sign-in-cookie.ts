import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

const cookieName = 'pullbook_sign_in';

/** How long a browser stays signed in: a fortnight, so that a tablet in the bay outlasts a weekend. */
export const signInMs = 14 * 24 * 3600 * 1000;

export function readSignInCookie(request: FastifyRequest): string | undefined {
  return request.cookies[cookieName];
}

export function setSignInCookie(request: FastifyRequest, reply: FastifyReply, secret: string): void {
  reply.setCookie(cookieName, secret, { ...cookieOptions(request), maxAge: signInMs / 1000 });
}

export function clearSignInCookie(request: FastifyRequest, reply: FastifyReply): void {
  reply.clearCookie(cookieName, cookieOptions(request));
}

function cookieOptions(request: FastifyRequest): {
  path: string;
  httpOnly: true;
  sameSite: 'lax';
  secure: boolean;
} {
  return { path: '/', httpOnly: true, sameSite: 'lax', secure: request.protocol === 'https' };
}
