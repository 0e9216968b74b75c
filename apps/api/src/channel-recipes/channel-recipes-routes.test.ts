import { ChannelQuantity, type ChannelRecipe, type Log } from '@pullbook/contracts';
import { CHANNEL_QUANTITIES } from '@pullbook/tuning-math';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testLog } from '../logs/test-log.js';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

/** A log whose pressure nobody would find by its header. */
const oddLog = (peakKpa: number): string => testLog([{ peakKpa }], 'P3 sensor');
const headers = ['Time (s)', 'RPM (1/min)', 'Throttle (%)', 'P3 sensor'];
const recipe = {
  name: 'The grey logger',
  shape: { headers, unitTexts: ['', '', '', ''], hasHeader: true },
  reading: {
    columns: [
      { header: 'Time (s)', quantity: 'time', unit: 's' },
      { header: 'RPM (1/min)', quantity: 'engine-speed', unit: 'rpm' },
      { header: 'Throttle (%)', quantity: 'throttle', unit: 'pct' },
      { header: 'P3 sensor', quantity: 'boost-pressure', unit: 'kPa' },
    ],
  },
};
const keep = (change: object = {}, person: TestPerson = shop.tuner) =>
  person.ask('POST', '/channel-recipes', { payload: { ...recipe, ...change } });
const drop = (text: string) =>
  shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs`, {
    payload: text,
    headers: { 'content-type': 'text/csv' },
  });
const ifMatch = (revision: number) => ({ headers: { 'if-match': `"${revision}"` } });
const events = async (): Promise<string[]> =>
  (await shop.owner.actor.db.auditEvent.findMany({ orderBy: { id: 'asc' } })).map(({ action }) => action);

describe('channel recipes', () => {
  it('know the very quantities that the analysis knows', () => {
    expect([...ChannelQuantity.options].sort()).toEqual(Object.keys(CHANNEL_QUANTITIES).sort());
  });

  it('make a log readable that was not, and every later one of its shape', async () => {
    const refused = await drop(oddLog(120));
    expect(refused.statusCode).toBe(422);
    expect(refused.json().detail).toContain('say in the channel recipe which column is boost');
    const kept = (await keep()).json() as ChannelRecipe;
    const log = (await drop(oddLog(120))).json() as Log;
    expect(log.recipeId).toBe(kept.id);
    expect(log.analysis.pulls[0]?.peakKpa).toBeCloseTo(120, 0);
    expect(log.analysis.channels[3]).toMatchObject({
      quantity: 'boost-pressure',
      basis: 'recipe',
      certain: true,
    });
    expect((await drop(oddLog(131))).json().recipeId).toBe(kept.id);
    expect((await drop(testLog([{ peakKpa: 90 }]))).json().recipeId).toBeNull();
  });

  it('serve POST /analysis/log too', async () => {
    const ask = () =>
      shop.desk.ask('POST', '/analysis/log', {
        payload: oddLog(120),
        headers: { 'content-type': 'text/csv' },
      });
    expect((await ask()).statusCode).toBe(422);
    await keep();
    expect((await ask()).json().pulls).toHaveLength(1);
  });

  it('are listed, read with an ETag, changed, and forgotten, each with its line in the records', async () => {
    const { id } = (await keep()).json();
    expect((await shop.desk.ask('GET', '/channel-recipes')).json().items).toHaveLength(1);
    const one = await shop.desk.ask('GET', `/channel-recipes/${id}`);
    expect(one.headers['etag']).toBe('"1"');
    const changed = await shop.tuner.ask('PATCH', `/channel-recipes/${id}`, {
      payload: { name: 'The black logger' },
      ...ifMatch(1),
    });
    expect(changed.json()).toMatchObject({
      name: 'The black logger',
      revision: 2,
      reading: one.json().reading,
    });
    const url = `/channel-recipes/${id}`;
    expect((await shop.tuner.ask('DELETE', url, ifMatch(1))).statusCode).toBe(412);
    expect((await shop.tuner.ask('DELETE', url)).statusCode).toBe(428);
    expect((await shop.tuner.ask('DELETE', url, ifMatch(2))).statusCode).toBe(204);
    expect((await shop.tuner.ask('GET', url)).statusCode).toBe(404);
    expect((await events()).filter((action) => action.startsWith('channel-recipe'))).toEqual([
      'channel-recipe-created',
      'channel-recipe-changed',
      'channel-recipe-deleted',
    ]);
  });

  it('refuse a lost race, a second one for the same shape, and a unit that cannot be', async () => {
    const { id } = (await keep()).json();
    const stale = await shop.tuner.ask('PATCH', `/channel-recipes/${id}`, {
      payload: { name: 'X' },
      ...ifMatch(7),
    });
    expect(stale.statusCode).toBe(412);
    expect((await keep({ name: 'Another' })).json()).toMatchObject({ code: 'conflict' });
    const columns = [{ header: 'P3 sensor', quantity: 'boost-pressure', unit: 'rpm' }];
    expect((await keep({ reading: { columns } })).json()).toMatchObject({
      code: 'invalid-request',
      errors: [{ field: 'reading.columns.0.unit' }],
    });
    const twice = [...recipe.reading.columns, { header: 'X', quantity: 'time', unit: 's' }];
    expect((await keep({ reading: { columns: twice } })).statusCode).toBe(400);
  });

  it('make one recipe of a create that is sent twice', async () => {
    const again = { payload: recipe, headers: { 'idempotency-key': 'keep-this-once' } };
    const first = await shop.tuner.ask('POST', '/channel-recipes', again);
    const second = await shop.tuner.ask('POST', '/channel-recipes', again);
    expect(second.json()).toEqual(first.json());
    expect(await shop.tuner.actor.db.channelRecipe.count()).toBe(1);
  });

  it('are for tuners to change, and unknown to another workshop', async () => {
    expect((await keep({}, shop.desk)).statusCode).toBe(403);
    const { id } = (await keep()).json();
    expect((await shop.stranger.ask('GET', `/channel-recipes/${id}`)).statusCode).toBe(404);
    expect((await shop.stranger.ask('DELETE', `/channel-recipes/${id}`, ifMatch(1))).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', '/channel-recipes')).json().items).toEqual([]);
    expect((await keep({}, shop.stranger)).statusCode).toBe(201);
  });
});
