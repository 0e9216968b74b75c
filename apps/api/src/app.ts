import compress from '@fastify/compress';
import cookie from '@fastify/cookie';
import multipart from '@fastify/multipart';
import rateLimit from '@fastify/rate-limit';
import type { OpenDatabase } from '@pullbook/database';
import { randomUUID } from 'node:crypto';
import Fastify, { LogController, type FastifyInstance, type FastifyServerOptions } from 'fastify';
import { serializerCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { adviceRoutes } from './advice/advice-routes.js';
import { boardRoutes } from './board/board-routes.js';
import { carsRoutes } from './cars/cars-routes.js';
import { channelRecipesRoutes } from './channel-recipes/channel-recipes-routes.js';
import { checklistsRoutes } from './checklists/checklists-routes.js';
import { controllersRoutes } from './controllers/controllers-routes.js';
import { customersRoutes } from './customers/customers-routes.js';
import { engineRoutes } from './engine/engine-routes.js';
import { reportPageRoutes } from './paper/page/report-page-routes.js';
import { paperRoutes } from './paper/paper-routes.js';
import { logSettingsRoutes } from './log-settings/log-settings-routes.js';
import { logVersionsRoutes } from './logs/log-versions-routes.js';
import { logsRoutes } from './logs/logs-routes.js';
import { peopleRoutes } from './people/people-routes.js';
import './plumbing/app-parts.js';
import type { Mode } from './plumbing/app-parts.js';
import { crossSiteCheck } from './plumbing/cross-site-check.js';
import { dashboard, type DashboardHandler } from './plumbing/dashboard.js';
import { events } from './plumbing/events.js';
import { idempotency } from './plumbing/idempotency.js';
import type { ObjectStore } from './plumbing/object-store.js';
import { openApi } from './plumbing/open-api.js';
import { problemDetails } from './plumbing/problem-details.js';
import { securityHeaders } from './plumbing/security-headers.js';
import { signIn } from './plumbing/sign-in-plugin.js';
import { zodValidatorCompiler } from './plumbing/zod-validation.js';
import { outlookRoutes } from './outlook/outlook-routes.js';
import { presetsRoutes } from './presets/presets-routes.js';
import { pullsRoutes } from './pulls/pulls-routes.js';
import { reportsRoutes } from './reports/reports-routes.js';
import { searchRoutes } from './search/search-routes.js';
import { signOffRoutes } from './sign-off/sign-off-routes.js';
import { tuningSessionsRoutes } from './tuning-sessions/tuning-sessions-routes.js';
import { recordsRoutes } from './records/records-routes.js';
import { tracesRoutes } from './traces/traces-routes.js';
import { uploadsRoutes } from './uploads/uploads-routes.js';
import { visitsRoutes } from './visits/visits-routes.js';

export interface AppOptions {
  readonly database: OpenDatabase;
  readonly objects: ObjectStore;
  readonly mode: Mode;
  readonly now?: () => Date;
  /** The one-time code that lets the first owner in; left out: nobody can become the first owner. */
  readonly firstOwnerCode?: string;
  /** Answers all paths that are not the API's; left out: those are not found. */
  readonly dashboard?: DashboardHandler;
  readonly logger?: FastifyServerOptions['logger'];
}

/** Requests that carry no log stay below this. */
const bodyLimit = 1 << 20;
/** A log file as an upload in parts; a route may ask for less. */
const fileLimit = 64 << 20;

export type App = FastifyInstance;

/** The whole server, ready to listen or to be asked by a test; owns neither its database nor its process. */
export async function buildApp(options: AppOptions): Promise<App> {
  const app = Fastify({
    logger: options.logger ?? false,
    logController: new LogController({ disableRequestLogging: true }),
    bodyLimit,
    genReqId: () => randomUUID(),
    routerOptions: { maxParamLength: 200 },
  }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(zodValidatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  app.decorate('database', options.database);
  app.decorate('objects', options.objects);
  app.decorate('mode', options.mode);
  app.decorate('now', options.now ?? (() => new Date()));
  await registerPlumbing(app);
  await registerNouns(app, options);
  if (options.dashboard) await app.register(dashboard, { handler: options.dashboard });
  await app.ready();
  return app;
}

async function registerPlumbing(app: FastifyInstance): Promise<void> {
  await app.register(problemDetails);
  await app.register(securityHeaders);
  await app.register(compress, { global: true, threshold: 1400 });
  await app.register(cookie);
  await app.register(rateLimit, { global: false });
  await app.register(multipart, { limits: { fileSize: fileLimit, files: 1, fields: 20 } });
  await app.register(crossSiteCheck);
  await app.register(signIn);
  await app.register(idempotency);
  await app.register(openApi);
  await app.register(events);
}

/** One line for each noun, in the order of the work. */
async function registerNouns(app: FastifyInstance, options: AppOptions): Promise<void> {
  const prefix = '/api/v1';
  await app.register(peopleRoutes, { prefix, firstOwnerCode: options.firstOwnerCode ?? null });
  await app.register(customersRoutes, { prefix });
  await app.register(carsRoutes, { prefix });
  await app.register(engineRoutes, { prefix });
  await app.register(controllersRoutes, { prefix });
  await app.register(visitsRoutes, { prefix });
  await app.register(presetsRoutes, { prefix });
  await app.register(outlookRoutes, { prefix });
  await app.register(tuningSessionsRoutes, { prefix });
  await app.register(pullsRoutes, { prefix });
  await app.register(channelRecipesRoutes, { prefix });
  await app.register(logSettingsRoutes, { prefix });
  await app.register(logsRoutes, { prefix });
  await app.register(logVersionsRoutes, { prefix });
  await app.register(uploadsRoutes, { prefix });
  await app.register(tracesRoutes, { prefix });
  await app.register(adviceRoutes, { prefix });
  await app.register(checklistsRoutes, { prefix });
  await app.register(signOffRoutes, { prefix });
  await app.register(reportsRoutes, { prefix });
  await app.register(paperRoutes, { prefix });
  await app.register(reportPageRoutes);
  await app.register(boardRoutes, { prefix });
  await app.register(searchRoutes, { prefix });
  await app.register(recordsRoutes, { prefix });
}
