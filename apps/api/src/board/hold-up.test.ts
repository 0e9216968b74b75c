import type { DutyAdvice } from '@pullbook/contracts';
import { expect, test } from 'vitest';
import { holdUp, type PresetAtHand, type VisitAtHand } from './hold-up.js';

const now = new Date('2026-11-25T09:00:00Z');
const advice = (more: Partial<DutyAdvice>): DutyAdvice => ({
  action: 'pull',
  duty: 46,
  prediction: null,
  reasons: [],
  curve: [],
  ...more,
});
const preset = (more: Partial<PresetAtHand> = {}): PresetAtHand => ({
  name: 'Dry track',
  hasTarget: true,
  hasCeiling: true,
  advice: advice({}),
  isProven: false,
  toProve: null,
  ...more,
});
const visit = (more: Partial<VisitAtHand> = {}): VisitAtHand => ({
  stage: 'on-test',
  now,
  bookedFor: null,
  promisedAt: null,
  hasController: true,
  hasTuner: true,
  presets: [preset()],
  readiness: { passed: true, doneCount: 9 },
  report: 'none',
  itemsToTick: 7,
  ...more,
});
const stopped = preset({
  advice: advice({
    action: 'stop',
    duty: null,
    reasons: [{ code: 'x', text: 'the target is out of reach.' }],
  }),
});
const at = (iso: string) => new Date(iso);

test.each<[string, boolean, Partial<VisitAtHand>]>([
  ['no time agreed yet', false, { stage: 'booked' }],
  ['to come in', false, { stage: 'booked', bookedFor: at('2026-11-26T08:00:00Z') }],
  ['booked time has passed; not arrived', true, { stage: 'booked', bookedFor: at('2026-11-25T08:00:00Z') }],
  ['waits for a tuner', false, { stage: 'arrived', hasTuner: false }],
  ['waits to go on test', false, { stage: 'arrived' }],
  ['controller not described yet', false, { hasController: false }],
  ['no preset wanted yet', false, { presets: [] }],
  ['no target agreed yet for Dry track', false, { presets: [preset({ hasTarget: false })] }],
  ['no ceiling agreed yet for Dry track', false, { presets: [preset({ hasCeiling: false, advice: null })] }],
  ['no tuning session yet', false, { readiness: null }],
  ['readiness check: 3 of 9 done', false, { readiness: { passed: false, doneCount: 3 } }],
  ['next pull: 46 %', false, {}],
  ['next pull: 46 % once more', false, { presets: [preset({ advice: advice({ action: 'repeat' }) })] }],
  ['store the accepted duty, 46 %', false, { presets: [preset({ advice: advice({ action: 'accept' }) })] }],
  ['stopped: the target is out of reach', true, { presets: [stopped] }],
  ['Dry track: stopped: the target is out of reach', true, { presets: [preset({ name: 'Road' }), stopped] }],
  ['Dry track: next pull: 46 %', false, { presets: [preset({ name: 'Road', isProven: true }), preset()] }],
  [
    'to prove: 1 more pull, heat-soaked',
    false,
    { presets: [preset({ toProve: '1 more pull, heat-soaked' })] },
  ],
  ['every preset is proven; to sign off next', false, { presets: [preset({ isProven: true })] }],
  ['7 items open to sign off', false, { stage: 'to-sign-off', presets: [preset({ isProven: true })] }],
  [
    '9 items open to sign off',
    false,
    { stage: 'to-sign-off', presets: [preset({ isProven: true })], itemsToTick: 9 },
  ],
  ['not proven yet: Dry track', true, { stage: 'to-sign-off' }],
  ['signed off; report not sent yet', false, { stage: 'ready' }],
  ['report sent', false, { stage: 'ready', report: 'sent' }],
  ['report opened by the customer', false, { stage: 'ready', report: 'opened' }],
  ['collected', false, { stage: 'collected', promisedAt: at('2026-11-20T08:00:00Z') }],
  ['next pull: 46 %; promised time has passed', true, { promisedAt: at('2026-11-25T08:59:00Z') }],
])('holdUp says "%s" (attention: %s)', (status, needsAttention, more) => {
  expect(holdUp(visit(more))).toEqual({ status, needsAttention });
});
