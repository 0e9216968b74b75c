import type { Preset, PresetRevision, Pull, TuningSession, Visit } from '@pullbook/contracts';
import { expect, test } from 'vitest';
import { unitsOf } from '../../../../../../components/units/units-of';
import { compareFigure, compareText } from './compared';
import { compareRevisions } from './compare-revisions';
import { compareVisits, type VisitMaterial } from './compare-visits';

const kpa = unitsOf({ pressure: 'kPa', temperature: 'C' });
const form = { write: (value: number) => `${value} kPa`, least: 0.05 };

test.each([
  [140, 144, '4 kPa higher', false],
  [144, 140, '4 kPa lower', false],
  [140, 140.04, 'the same', true],
  [null, 140, 'set', false],
  [140, null, 'no longer set', false],
  [null, null, 'neither has one', true],
] as const)('compareFigure says of %s and %s: %s', (left, right, change, isSame) => {
  expect(compareFigure('Target', left, right, form)).toMatchObject({ change, isSame });
});

test('compareText says what was added, taken away and changed', () => {
  const said = [
    ['', 'dry'],
    ['dry', null],
    ['dry', 'wet'],
    ['dry', 'dry'],
  ].map(([left, right]) => compareText('Purpose', left ?? null, right ?? null).change);
  expect(said).toEqual(['added', 'no longer given', 'changed', 'the same']);
});

const revision = (more: Partial<PresetRevision>): PresetRevision => ({
  ...{ revision: 1, name: 'Everyday', purpose: '', slot: 1, kind: 'standing', holdSeconds: null },
  ...{ targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155, dutyPct: 46, gateHoldPct: null },
  ...{ correctionStrength: null, reason: '', madeBy: 'T', madeAt: '2026-04-01T08:00:00Z' },
  ...more,
});
const changesOf = (groups: ReturnType<typeof compareRevisions>) =>
  groups.flatMap(({ lines }) => lines.filter((line) => !line.isSame).map((line) => [line.what, line.change]));

test('compareRevisions names what changed and leaves the rest the same, in the person’s unit', () => {
  const right = revision({ revision: 2, targetKpa: 130, dutyPct: 41.5, gateHoldPct: 60, name: 'Winter' });
  expect(changesOf(compareRevisions(revision({}), right, kpa))).toEqual([
    ['Target', '10\u00a0kPa lower'],
    ['Duty', '4.5 points lower'],
    ['Gate hold', 'set'],
    ['Name', 'changed'],
  ]);
  const psi = unitsOf({ pressure: 'psi', temperature: 'F' });
  // 10 kPa = 1.4504 psi, NIST SP 811 appendix B.8: 1 psi = 6.894757 kPa.
  expect(changesOf(compareRevisions(revision({}), right, psi))[0]).toEqual(['Target', '1.5\u00a0psi lower']);
  expect(changesOf(compareRevisions(right, right, kpa))).toEqual([]);
});

const pull = (dutyPct: number, peakKpa: number, more: Partial<Pull> = {}) =>
  ({
    presetId: 'p',
    presetRevision: 1,
    dutyPct,
    holdPct: null,
    peakKpa,
    usable: true,
    voidedAt: null,
    ...more,
  }) as Pull;

function visit(temperatureC: number | null, pulls: readonly Pull[]): VisitMaterial {
  const air = { temperatureC, pressureAbsKpa: 101.3, humidityPct: 50 };
  const session = { placeKind: 'dyno-cell', place: 'Cell 1', driver: 'D', fuel: '', air } as TuningSession;
  return { visit: { createdAt: '2026-04-01T08:00:00Z' } as Visit, sessions: [session], pulls };
}
const car = {
  presets: [{ id: 'p', slot: 1, name: 'Everyday' } as Preset, { id: 'q', slot: 2, name: 'Wet' } as Preset],
  revisionsOf: () => [revision({}), revision({ revision: 2, targetKpa: 130 })],
};

test('compareVisits tells conditions, settings and peaks apart, from usable pulls that stand', () => {
  const left = visit(10, [pull(40, 120), pull(46, 141), pull(46, 139), pull(46, 170, { usable: false })]);
  const right = visit(30, [
    pull(46, 134, { presetRevision: 2 }),
    pull(46, 160, { voidedAt: '2026-05-01T08:00:00Z' }),
  ]);
  const groups = compareVisits(left, right, car, kpa);
  expect(groups.map(({ title }) => title)).toEqual(['Conditions', '1 Everyday']);
  expect(changesOf(groups)).toEqual([
    ['Air temperature', '20.0 °C higher'],
    ['Target', '10\u00a0kPa lower'],
    ['Mean peak at these', '6.0 kPa lower at the same settings'],
    ['Highest peak', '36.0 kPa lower'],
    ['Usable pulls', '2 fewer'],
  ]);
});

test('compareVisits says of a preset that one visit did not drive that it has no figures there', () => {
  const lines = compareVisits(visit(null, []), visit(20, [pull(46, 140)]), car, kpa)[1]?.lines ?? [];
  expect(lines.find(({ what }) => what === 'Mean peak at these')).toMatchObject({ left: '–', change: 'set' });
});
