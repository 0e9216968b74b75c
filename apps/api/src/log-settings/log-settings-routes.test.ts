import { PullSettings, type LogSettings } from '@pullbook/contracts';
import { DEFAULT_PULL_SETTINGS } from '@pullbook/tuning-math';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
beforeEach(async () => {
  shop = await openTestWorkshop();
});
afterEach(() => shop.close());

const change = (changes: object, revision: number, person: TestPerson = shop.owner) =>
  person.ask('PATCH', '/log-settings', {
    payload: { changes },
    headers: { 'if-match': `"${revision}"` },
  });
const read = async (person: TestPerson = shop.desk): Promise<LogSettings> =>
  (await person.ask('GET', '/log-settings')).json();

describe('log settings', () => {
  it('are the default ones at first, field for field those of the analysis', async () => {
    const { settings, defaults, revision } = await read();
    expect(defaults).toEqual(DEFAULT_PULL_SETTINGS);
    expect(settings).toEqual(defaults);
    expect(revision).toBe(1);
    expect(Object.keys(PullSettings.shape).sort()).toEqual(Object.keys(DEFAULT_PULL_SETTINGS).sort());
  });

  it('take changes over the defaults, keep them for this workshop alone, and go back', async () => {
    const answer = await change({ leastSpanRpm: 2500, slipPct: DEFAULT_PULL_SETTINGS.slipPct }, 1);
    expect(answer.headers['etag']).toBe('"2"');
    expect((await read()).settings).toEqual({ ...DEFAULT_PULL_SETTINGS, leastSpanRpm: 2500 });
    expect((await read(shop.stranger)).settings).toEqual(DEFAULT_PULL_SETTINGS);
    expect((await change({}, 2)).json().settings).toEqual(DEFAULT_PULL_SETTINGS);
    const actions = (await shop.owner.actor.db.auditEvent.findMany()).map(({ action }) => action);
    expect(actions.filter((action) => action === 'log-settings-changed')).toHaveLength(2);
  });

  it('refuse what is out of range by name, a lost race, and whoever is not the owner', async () => {
    expect((await change({ slipPct: 90 }, 1)).json()).toMatchObject({
      code: 'invalid-request',
      errors: [{ field: 'changes.slipPct', message: 'give a number from 2 to 15' }],
    });
    expect((await change({ trustedGears: [] }, 1)).statusCode).toBe(400);
    expect((await change({ slipPct: 6 }, 9)).statusCode).toBe(412);
    expect((await change({ slipPct: 6 }, 1, shop.tuner)).statusCode).toBe(403);
    expect((await read()).settings).toEqual(DEFAULT_PULL_SETTINGS);
  });
});
