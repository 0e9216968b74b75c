import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from './test-workshop.js';

let shop: TestWorkshop;
const asked: string[] = [];
beforeAll(async () => {
  shop = await openTestWorkshop({
    dashboard: async (request, response) => {
      asked.push(`${request.method} ${request.url}`);
      response.end('<p>page</p>');
    },
  });
});
afterAll(() => shop.close());

test('every path that is not the API’s own goes to the dashboard, signed in or not', async () => {
  for (const url of ['/', '/board?filter=a', '/visits/1', '/_next/static/a.js']) {
    const page = await shop.app.inject({ url });
    expect(page.body).toBe('<p>page</p>');
    expect(page.headers['content-security-policy']).toContain("default-src 'self'");
    expect(page.headers['content-security-policy']).toContain("frame-ancestors 'none'");
  }
  expect(asked).toEqual(['GET /', 'GET /board?filter=a', 'GET /visits/1', 'GET /_next/static/a.js']);
});

test('paths of the API never reach the dashboard', async () => {
  asked.length = 0;
  for (const url of ['/api', '/api/v1/unknown', '/api/v2']) {
    expect((await shop.app.inject({ url })).json()).toMatchObject({ status: 404, code: 'not-found' });
  }
  expect((await shop.app.inject({ url: '/api/v1/customers' })).statusCode).toBe(401);
  expect((await shop.app.inject({ method: 'POST', url: '/board' })).statusCode).toBe(404);
  expect(asked).toEqual([]);
});
