import type { ChangeEvent, Role } from '@pullbook/contracts';
import type { OpenDatabase } from '@pullbook/database';
import type { Actor } from './actor.js';
import type { ObjectStore } from './object-store.js';

/** Tells the open browsers of a workshop that a record changed; call it after the transaction. */
export type Announce = (workshopId: string, event: ChangeEvent) => void;

/** demo: practice accounts, this machine only. serve: a real workshop. */
export type Mode = 'demo' | 'serve';

/** What the app carries beside Fastify's own, and what a route may say of itself. */
declare module 'fastify' {
  interface FastifyInstance {
    database: OpenDatabase;
    objects: ObjectStore;
    mode: Mode;
    now: () => Date;
    announce: Announce;
  }
  interface FastifyRequest {
    /** Who is signed in; throws not-signed-in where nobody is. */
    readonly actor: Actor;
    /** The same, or null; written by the sign-in plugin alone. */
    signedIn: Actor | null;
  }
  interface FastifyContextConfig {
    /** Nobody needs to be signed in. */
    public?: boolean;
    /** Who may; left out: any signed-in member. */
    roles?: readonly Role[];
    /** The reply shows a secret, or makes nothing: it is not kept for an Idempotency-Key. */
    keepsNoReply?: boolean;
  }
}
