import helmet from '@fastify/helmet';
import fp from 'fastify-plugin';

/**
 * What browsers may do with our answers. The strict rule is for all that Fastify answers itself: no script at all.
 * The dashboard's pages get their own, looser one (dashboard.ts).
 */
export const securityHeaders = fp(
  async (app) => {
    await app.register(helmet, {
      // Over plain HTTP in the workshop's own network a promise of HTTPS would lock people out.
      hsts: false,
      contentSecurityPolicy: {
        useDefaults: false,
        directives: {
          defaultSrc: ["'none'"],
          styleSrc: ["'self'", "'unsafe-inline'"],
          imgSrc: ["'self'", 'data:'],
          fontSrc: ["'self'", 'data:'],
          baseUri: ["'none'"],
          formAction: ["'self'"],
          frameAncestors: ["'none'"],
        },
      },
    });
  },
  { name: 'security-headers' },
);
