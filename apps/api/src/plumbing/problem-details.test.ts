import { ErrorCode } from '@pullbook/contracts';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { statusOfCode } from './status-of-code.js';
import { openTestWorkshop, type TestWorkshop } from './test-workshop.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
});
afterAll(() => shop.close());

const post = (payload: string, contentType: string) =>
  shop.desk.ask('POST', '/customers', { payload, headers: { 'content-type': contentType } });

test('every error code has a status of its kind', () => {
  for (const code of ErrorCode.options) expect(statusOfCode[code]).toBeGreaterThanOrEqual(400);
  expect(Object.keys(statusOfCode).sort()).toEqual([...ErrorCode.options].sort());
});

test('a refusal is problem details by RFC 9457, with a number to ask about', async () => {
  const answer = await shop.desk.ask('GET', '/nothing/here?secret=1');
  expect(answer.statusCode).toBe(404);
  expect(answer.headers['content-type']).toBe('application/problem+json');
  expect(answer.json()).toEqual({
    type: 'tag:pullbook.example,2026:problem/not-found',
    title: 'Not found',
    status: 404,
    detail: 'there is nothing at /api/v1/nothing/here',
    instance: '/api/v1/nothing/here',
    code: 'not-found',
    requestId: expect.stringMatching(/^[0-9a-f-]{36}$/),
  });
});

test.each([
  ['{"name":', 'application/json', 400, 'invalid-request'],
  ['', 'application/json', 400, 'invalid-request'],
  ['[]', 'application/json', 400, 'invalid-request'],
  ['name=A', 'application/x-www-form-urlencoded', 415, 'unsupported-media-type'],
  [`{"name":"${'A'.repeat(1 << 20)}"}`, 'application/json', 413, 'too-large'],
])('a body that cannot be read is told so (%#)', async (payload, contentType, status, code) => {
  const answer = await post(payload, contentType);
  expect(answer.json()).toMatchObject({ status, code });
});

test('a body that is no object is called by that name', async () => {
  expect((await post('[]', 'application/json')).json().errors).toEqual([
    { field: 'body', message: 'must be an object with named fields' },
  ]);
});

test('what went wrong inside stays inside', async () => {
  const fails = vi
    .spyOn(shop.database.client.signIn, 'findUnique')
    .mockRejectedValue(new Error('secret of the inside') as never);
  const answer = await shop.desk.ask('GET', '/customers');
  fails.mockRestore();
  expect(answer.json()).toMatchObject({ status: 500, code: 'internal' });
  expect(answer.body).not.toContain('secret of the inside');
});

test('a database that gives no turn in time is busy, to be asked again', async () => {
  const fails = vi
    .spyOn(shop.database.client.signIn, 'findUnique')
    .mockRejectedValue(Object.assign(new Error('no turn'), { code: 'P2028' }) as never);
  const answer = await shop.desk.ask('GET', '/customers');
  fails.mockRestore();
  expect(answer.statusCode).toBe(503);
  expect(answer.headers['retry-after']).toBe('2');
});

test('answers let browsers run no script and guess no type', async () => {
  const { headers } = await shop.desk.ask('GET', '/customers');
  expect(headers['content-security-policy']).toContain("default-src 'none'");
  expect(headers['content-security-policy']).not.toContain('script-src');
  expect(headers['x-content-type-options']).toBe('nosniff');
});
