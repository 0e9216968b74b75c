import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from './test-workshop.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
});
afterAll(() => shop.close());

interface Operation {
  readonly responses: Record<string, unknown>;
}

test('GET /openapi.json describes the API by OpenAPI 3.1, to anybody', async () => {
  const answer = await shop.app.inject({ url: '/api/v1/openapi.json' });
  expect(answer.json()).toMatchObject({ openapi: '3.1.0', info: { title: 'Pullbook' } });
});

test('GET /openapi.json has the paths that other programs rely on', async () => {
  const { paths } = (await shop.app.inject({ url: '/api/v1/openapi.json' })).json();
  const promised = [
    '/sign-in',
    '/health',
    '/customers',
    '/cars',
    '/controllers',
    '/cars/{id}/presets',
    '/presets/{id}',
    '/visits',
    '/visits/{id}/tuning-sessions',
    '/tuning-sessions/{id}/pulls',
    '/tuning-sessions/{id}/logs',
    '/visits/{id}/sign-off',
    '/visits/{id}/report',
    '/board',
    '/advice/duty',
    '/analysis/log',
  ];
  expect(Object.keys(paths)).toEqual(expect.arrayContaining(promised.map((path) => `/api/v1${path}`)));
});

test('GET /openapi.json names the contracts and says what success looks like everywhere', async () => {
  const { paths, components } = (await shop.app.inject({ url: '/api/v1/openapi.json' })).json();
  expect(Object.keys(components.schemas)).toEqual(
    expect.arrayContaining(['Customer', 'CustomerNew', 'Visit']),
  );
  const silent = Object.entries(paths as Record<string, Record<string, Operation>>).flatMap(
    ([path, operations]) =>
      Object.entries(operations)
        .filter(([, operation]) => !Object.keys(operation.responses).some((status) => status.startsWith('2')))
        .map(([method]) => `${method} ${path}`),
  );
  expect(silent).toEqual([]);
});

test('GET /api/docs is a page to read it, whose own script may run', async () => {
  const page = await shop.app.inject({ url: '/api/docs/' });
  expect(page.statusCode).toBe(200);
  expect(page.headers['content-type']).toContain('text/html');
  expect(page.headers['content-security-policy']).toContain("script-src 'self';");
  expect(page.headers['content-security-policy']).not.toMatch(/https?:/);
  expect(page.body).toContain('<title>Pullbook API</title>');
});
