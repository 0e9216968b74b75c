import { amount, sentence, type Sentence } from '../sentences/index.js';
import { holdReason } from './gate-hold-reasons.js';
import type { GateHoldReason, HoldGain, HoldPull } from './gate-hold-types.js';

/** What raising the hold brought, from the lowest hold pulled to the found one, and the words for it. */
export function holdGain(
  pulls: readonly HoldPull[],
  holdPct: number,
): { gain: HoldGain; reason: GateHoldReason | null } {
  const lowest = Math.min(...pulls.map((pull) => pull.holdPct));
  const before = pulls.filter((pull) => pull.holdPct === lowest);
  const after = pulls.filter((pull) => Math.abs(pull.holdPct - holdPct) < 1e-6);
  const riseTimeS = lowest === holdPct ? null : difference(before, after, 'riseTimeS');
  const onsetRpm = lowest === holdPct ? null : difference(before, after, 'onsetRpm');
  const words = [
    riseTimeS === null ? null : sentence`rises in ${amount(riseTimeS, 's', 2)} less`,
    onsetRpm === null ? null : sentence`comes ${amount(onsetRpm, 'r/min', 0)} earlier`,
  ].filter((word) => word !== null);
  const gained = words.reduce<Sentence | null>((all, one) => (all ? sentence`${all} and ${one}` : one), null);
  const reason = gained && holdReason.fasterResponse(gained, lowest);
  return { gain: { riseTimeS, onsetRpm }, reason };
}

function difference(
  before: readonly HoldPull[],
  after: readonly HoldPull[],
  field: 'riseTimeS' | 'onsetRpm',
): number | null {
  const [from, to] = [mean(before, field), mean(after, field)];
  return from === null || to === null ? null : from - to;
}

function mean(pulls: readonly HoldPull[], field: 'riseTimeS' | 'onsetRpm'): number | null {
  const values = pulls.flatMap((pull) => pull[field] ?? []);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
