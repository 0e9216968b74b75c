import type { DriftAlarm, Preset } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  comeBack,
  fillTestYard,
  pullAt,
  storeDuty,
  testPeakKpa,
  type TestYard,
} from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
let back: TestYard;
const dutyPct = 50;
const meanKpa = testPeakKpa(dutyPct);
/** A first visit that proves the preset at 50 % duty, and a second one. */
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
  const { presetId } = yard;
  const preset: Preset = (await shop.tuner.ask('GET', `/presets/${presetId}`)).json();
  const goal = { targetKpa: Math.round(meanKpa), toleranceKpa: 6, ceilingKpa: 160 };
  await shop.tuner.ask('PATCH', `/presets/${presetId}`, {
    payload: { ...goal, dutyPct, reason: 'found' },
    headers: { 'if-match': `"${preset.revision}"` },
  });
  for (const offKpa of [0.3, -0.4, 0.2, -0.1, 0.1]) {
    await pullAt(shop.tuner, yard, dutyPct, { peakKpa: meanKpa + offKpa, heatSoaked: true });
  }
  back = await comeBack(shop.tuner, yard);
});
afterEach(() => shop.close());

const alarmOf = async (): Promise<DriftAlarm | null> =>
  (await shop.desk.ask('GET', `/presets/${yard.presetId}`)).json().drift;
const cardOf = async (visitId: string) =>
  (await shop.desk.ask('GET', '/board'))
    .json()
    .cards.find((card: { visitId: string }) => card.visitId === visitId);
const eventsOf = async (): Promise<string[]> => {
  const rows = await shop.owner.actor.db.auditEvent.findMany({
    where: { recordId: yard.presetId, action: { startsWith: 'drift-alarm' } },
    orderBy: { id: 'asc' },
  });
  return rows.map(({ action }) => action);
};
const jump = () => pullAt(shop.tuner, back, dutyPct, { peakKpa: meanKpa * 0.88 });

describe('the stored duty that an earlier visit proved', () => {
  const basisOf = async (at: TestYard) =>
    (
      await shop.tuner.ask('GET', `/tuning-sessions/${at.sessionId}/next-pull?presetId=${at.presetId}`)
    ).json();

  it('is a fair first pull of a car that comes back, and loosens no advice', async () => {
    const next = await basisOf(back);
    expect(next.basis.provenDutyPct).toBe(dutyPct);
    expect(next.advice.duty).toBeLessThanOrEqual(10);
    const above = await pullAt(shop.tuner, back, dutyPct + 1);
    expect(above.warnings).toMatchObject([{ code: 'over-step-limit' }]);
    const other = await comeBack(shop.tuner, yard);
    expect((await pullAt(shop.tuner, other, dutyPct)).warnings).toEqual([]);
  });

  it('is none in the visit that proves it, and none any more once it has drifted', async () => {
    expect((await basisOf(yard)).basis.provenDutyPct).toBeNull();
    await jump();
    const again = await comeBack(shop.tuner, yard);
    expect((await basisOf(again)).basis.provenDutyPct).toBeNull();
    expect((await pullAt(shop.tuner, again, dutyPct)).warnings).toMatchObject([{ code: 'over-step-limit' }]);
  });
});

describe('refreshDrift', () => {
  it('raises the alarm with the very pull that fires it, on the board and with the preset', async () => {
    await pullAt(shop.tuner, back, dutyPct, { peakKpa: meanKpa + 0.2 });
    expect(await alarmOf()).toBeNull();
    expect((await cardOf(back.visitId)).needsAttention).toBe(false);
    const fired = await jump();
    const alarm = await alarmOf();
    expect(alarm).toMatchObject({
      rule: 'shewhart-single-pull',
      pullId: fired.id,
      pullNumber: 2,
      visitId: back.visitId,
    });
    expect(alarm?.text).toContain('a single pull outside its limits (Shewhart chart), pull 2 of visit');
    const card = await cardOf(back.visitId);
    expect(card).toMatchObject({ needsAttention: true, presets: [{ drift: alarm }] });
    expect(card.status).toBe(`drift alarm: Dry track; ${card.statusBesidesDrift}`);
    expect(card.statusBesidesDrift).not.toMatch(/drift/);
    expect(await eventsOf()).toEqual(['drift-alarm-raised']);
  });

  it('keeps one alarm while it stands, brings its size up to date, and closes it with the void', async () => {
    const fired = await jump();
    const first = await alarmOf();
    await pullAt(shop.tuner, back, dutyPct, { peakKpa: meanKpa * 0.99 });
    const second = await alarmOf();
    expect(second?.pullId).toBe(first?.pullId);
    expect(Math.abs(second?.driftPct ?? 99)).toBeLessThan(Math.abs(first?.driftPct ?? 0));
    await shop.tuner.ask('POST', `/pulls/${fired.id}/void`, { payload: { reason: 'line was off' } });
    expect(await alarmOf()).toBeNull();
    expect(await eventsOf()).toEqual(['drift-alarm-raised', 'drift-alarm-closed']);
    const kept = await shop.owner.actor.db.driftAlarm.findMany();
    expect(kept).toMatchObject([{ pullId: fired.id, clearedAt: shop.clock.now() }]);
  });

  it('ends with the settings that it was about', async () => {
    await jump();
    await storeDuty(shop.tuner, yard.presetId, dutyPct + 2);
    expect(await alarmOf()).toBeNull();
  });

  it('counts neither pulls at other settings nor pulls with an override on', async () => {
    await pullAt(shop.tuner, back, dutyPct - 6);
    await pullAt(shop.tuner, back, dutyPct, { peakKpa: meanKpa * 1.06, overrideOn: true });
    expect(await alarmOf()).toBeNull();
  });

  it('looks again when the air of a session is put right', async () => {
    await pullAt(shop.tuner, back, dutyPct, { peakKpa: meanKpa * 0.88 });
    const before = await alarmOf();
    const session = (await shop.tuner.ask('GET', `/tuning-sessions/${back.sessionId}`)).json();
    const first = (await shop.tuner.ask('GET', `/tuning-sessions/${yard.sessionId}`)).json();
    const put = async (id: string, revision: number, temperatureC: number) =>
      shop.tuner.ask('PATCH', `/tuning-sessions/${id}`, {
        payload: { air: { temperatureC, pressureAbsKpa: 100, humidityPct: null } },
        headers: { 'if-match': `"${revision}"` },
      });
    expect((await put(first.id, first.revision, -35)).statusCode).toBe(200);
    expect((await put(session.id, session.revision, 55)).statusCode).toBe(200);
    expect(before?.mayBeConditions).toBe(false);
    expect((await alarmOf())?.mayBeConditions).toBe(true);
  });
});
