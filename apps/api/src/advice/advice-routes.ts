import {
  Air,
  AirRequest,
  DutyAdvice,
  DutyAdviceRequest,
  Forecast,
  ForecastRequest,
  GateHoldAdvice,
  GateHoldAdviceRequest,
  Id,
  IdParams,
  NextCorrection,
  NextGateHold,
  NextPull,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { adviseHold } from './advise-hold.js';
import { adviseOnce } from '@pullbook/next-pull';
import { describeAir } from './describe-air.js';
import { findNextCorrection } from './find-next-correction.js';
import { findNextGateHold } from './find-next-gate-hold.js';
import { findNextPull } from './find-next-pull.js';
import { forecastPreset } from './forecast-preset.js';
import { refuseArgument } from './refuse-argument.js';
import '../plumbing/app-parts.js';

const tags = ['advice'];
const NextPullQuery = z.object({ presetId: Id });
/** For any person or program of a workshop. A computation makes no record: asking twice gives the same answer anyway. */
const computed = { config: { roles: ['owner', 'tuner', 'desk'] as const, keepsNoReply: true } };

/** What to do next: for a preset on record, or for figures that are sent along. */
export const adviceRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/tuning-sessions/:id/next-pull',
    { schema: { tags, params: IdParams, querystring: NextPullQuery, response: { 200: NextPull } } },
    ({ actor, params, query }) => findNextPull(actor, params.id, query.presetId),
  );

  app.get(
    '/tuning-sessions/:id/next-gate-hold',
    { schema: { tags, params: IdParams, querystring: NextPullQuery, response: { 200: NextGateHold } } },
    ({ actor, params, query }) => findNextGateHold(actor, params.id, query.presetId),
  );

  app.get(
    '/tuning-sessions/:id/next-correction',
    { schema: { tags, params: IdParams, querystring: NextPullQuery, response: { 200: NextCorrection } } },
    ({ actor, params, query }) => findNextCorrection(actor, params.id, query.presetId),
  );

  app.post(
    '/advice/duty',
    { ...computed, schema: { tags, body: DutyAdviceRequest, response: { 200: DutyAdvice } } },
    async ({ body }) => refuseArgument(() => adviseOnce(body).advice),
  );

  app.post(
    '/advice/gate-hold',
    { ...computed, schema: { tags, body: GateHoldAdviceRequest, response: { 200: GateHoldAdvice } } },
    async ({ body }) => refuseArgument(() => adviseHold(body)),
  );

  app.post(
    '/air',
    { ...computed, schema: { tags, body: AirRequest, response: { 200: Air } } },
    async ({ body }) => refuseArgument(() => describeAir(body)),
  );

  app.post(
    '/forecast',
    { ...computed, schema: { tags, body: ForecastRequest, response: { 200: Forecast } } },
    async ({ body }) => refuseArgument(() => forecastPreset(body)),
  );
};
