import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import fp from 'fastify-plugin';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { version } from './version.js';
import './app-parts.js';

const description = [
  'Pressures are kPa gauge, temperatures °C, times seconds; a number carries its unit as last word of its name.',
  'Errors are problem details (RFC 9457) that name the field. Changes need If-Match with the revision that was seen;',
  'a POST that creates may carry an Idempotency-Key, and then makes one record however often it is sent.',
  'Programs send a token as Authorization: Bearer; people sign in and keep a cookie.',
].join(' ');

/** The page's own script and styles, and nothing from elsewhere. */
const pagePolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');
const noLogo = '<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>';
const noTopBar = '.topbar { display: none; }';

/** The description of the API at /api/v1/openapi.json, made from the contracts, and a page to read it at /api/docs. */
export const openApi = fp(
  async (app) => {
    await app.register(swagger, {
      openapi: {
        openapi: '3.1.0',
        info: { title: 'Pullbook', version, description },
        components: {
          securitySchemes: {
            token: { type: 'http', scheme: 'bearer' },
            cookie: { type: 'apiKey', in: 'cookie', name: 'pullbook_sign_in' },
          },
        },
        security: [{ token: [] }, { cookie: [] }],
      },
      transform: jsonSchemaTransform,
      transformObject: jsonSchemaTransformObject,
    });
    await app.register(swaggerUi, {
      routePrefix: '/api/docs',
      staticCSP: pagePolicy,
      logo: { type: 'image/svg+xml', content: Buffer.from(noLogo) },
      theme: { title: 'Pullbook API', favicon: [], css: [{ filename: 'page.css', content: noTopBar }] },
      uiConfig: { validatorUrl: 'none' },
    });
    app.get('/api/v1/openapi.json', { schema: { hide: true }, config: { public: true } }, () =>
      app.swagger(),
    );
  },
  { name: 'open-api' },
);
