import { afterEach, beforeEach, expect, test } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, pullAt, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const read = async (path: string) => (await shop.tuner.ask('GET', path)).json();

/** What each place that asks the advice says of the preset. */
async function toldEverywhere() {
  const next = await read(`/tuning-sessions/${yard.sessionId}/next-pull?presetId=${yard.presetId}`);
  const { cards } = await read('/board');
  const card = cards.find(({ visitId }: { visitId: string }) => visitId === yard.visitId);
  const signOff = await read(`/visits/${yard.visitId}/sign-off`);
  return {
    advice: next.advice,
    board: card.status as string,
    preset: JSON.stringify((await read(`/presets/${yard.presetId}`)).missing),
    signOff: JSON.stringify(signOff.presets[0].unproven),
  };
}

/** Three low pulls and one that soars far past the ceiling: a fault, or a car that answers late and steeply. */
async function pullUntilItSoars(): Promise<string> {
  for (const [dutyPct, peakKpa] of [
    [10, 56],
    [20, 56.5],
    [30, 57],
  ] as const)
    await pullAt(shop.tuner, yard, dutyPct, { peakKpa });
  return (await pullAt(shop.tuner, yard, 40, { peakKpa: 190 })).id;
}

test('a car found sound is advised on by visit screen, board, preset and sign-off alike', async () => {
  const soaredId = await pullUntilItSoars();
  const stopped = await toldEverywhere();
  expect(stopped.advice.action).toBe('stop');
  for (const told of [stopped.board, stopped.preset, stopped.signOff]) expect(told).toContain('soared');
  await shop.tuner.ask('POST', `/pulls/${soaredId}/found-sound`, { payload: {} });
  const sound = await toldEverywhere();
  expect(sound.advice.action).toBe('pull');
  expect(sound.advice.duty).toBeLessThan(40);
  expect(sound.board).toBe(`next pull: ${sound.advice.duty} %`);
  for (const told of [sound.preset, sound.signOff]) expect(told).not.toContain('soared');
});

test('the mark goes with its pull: voided, the look at the car counts no more', async () => {
  const soaredId = await pullUntilItSoars();
  const last = await pullAt(shop.tuner, yard, 31, { peakKpa: 60 });
  await shop.tuner.ask('POST', `/pulls/${last.id}/found-sound`, { payload: {} });
  const next = () => read(`/tuning-sessions/${yard.sessionId}/next-pull?presetId=${yard.presetId}`);
  expect((await next()).foundSoundAfterPull).toBe(5);
  await shop.tuner.ask('POST', `/pulls/${last.id}/void`, { payload: { reason: 'throttle lifted' } });
  expect(await next()).toMatchObject({ foundSoundAfterPull: null, advice: { action: 'stop' } });
  await shop.tuner.ask('POST', `/pulls/${soaredId}/found-sound`, { payload: {} });
  expect(await next()).toMatchObject({ foundSoundAfterPull: 4, advice: { action: 'pull' } });
});
