import { formatNumber } from '../units/format-number.js';
import type { BoostGoal } from '../duty/duty-advice-types.js';
import type { PresetStanding, PresetStandingRequest, SetPull, StandingGap } from './preset-standing-types.js';
import { provePreset } from './prove-preset.js';
import type { PresetProof } from './proof-types.js';

/** Settings that differ by no more than this are the same, %: controllers step in 0.1 or more. */
const SAME_PCT = 0.01;

/**
 * State of a preset from the data alone: draft until goal, controller and a first pull are there; on test until
 * the pulls at exactly the stored settings prove it (`provePreset`); proven; signed off for exactly the sealed
 * revision; replaced once a newer preset took its slot. Use it wherever a state is shown, signed or counted.
 *
 * A pull at another duty or gate hold neither proves nor disproves the stored settings; while the advice says
 * stop, nothing is proven.
 *
 * @param request what is stored of the preset, its pulls with their settings, the workshop's rule
 * @returns state, what is missing in plain words, the proof, and which pulls it rests on
 * @throws NotFiniteError, OutOfRangeError naming the field
 * Source: ISO 16269-6:2014 through `provePreset`; the order of the states is common practice, no source.
 */
export function derivePresetStanding(request: PresetStandingRequest): PresetStanding {
  const atSettings = request.pulls.flatMap((pull, index) => (isAtSettings(pull, request) ? [index] : []));
  const proof = proofOf(request, atSettings);
  const answer = (state: PresetStanding['state'], missing: readonly StandingGap[]): PresetStanding => ({
    state,
    missing,
    proof,
    atSettings,
  });
  if (request.isReplaced) return answer('replaced', []);
  if (request.signedOffRevision === request.revision) return answer('signed-off', []);
  const unready = gapsOfDraft(request);
  if (unready.length > 0) return answer('draft', unready);
  const unproven = gapsOfTest(request, proof, atSettings.length);
  if (unproven.length > 0) return answer('on-test', unproven);
  return answer('proven', [{ code: 'not-signed-off', text: 'It is not signed off yet.' }]);
}

function isAtSettings(pull: SetPull, { dutyPct, gateHoldPct }: PresetStandingRequest): boolean {
  const isSame = (made: number, stored: number): boolean => Math.abs(made - stored) <= SAME_PCT;
  if (dutyPct === null || !isSame(pull.dutyPct, dutyPct)) return false;
  if (typeof pull.holdPct !== 'number' || typeof gateHoldPct !== 'number') return true;
  return isSame(pull.holdPct, gateHoldPct);
}

function goalOf({ targetKpa, toleranceKpa, ceilingKpa }: PresetStandingRequest): BoostGoal | null {
  return targetKpa === null || ceilingKpa === null ? null : { targetKpa, toleranceKpa, ceilingKpa };
}

function proofOf(request: PresetStandingRequest, atSettings: readonly number[]): PresetProof | null {
  const goal = goalOf(request);
  if (goal === null || request.dutyPct === null) return null;
  const { kind, holdSeconds, rule, pooled } = request;
  const pulls = request.pulls.filter((_, index) => atSettings.includes(index));
  return provePreset({ goal, pulls, kind, holdSeconds, rule, pooled });
}

function gapsOfDraft(request: PresetStandingRequest): StandingGap[] {
  const gaps: (StandingGap | null)[] = [
    request.hasController
      ? null
      : { code: 'no-controller', text: "The car's controller is not described yet." },
    request.targetKpa === null ? { code: 'no-target', text: 'No target is agreed.' } : null,
    request.ceilingKpa === null ? { code: 'no-ceiling', text: 'No ceiling is agreed.' } : null,
    request.pulls.length === 0 ? { code: 'no-pull', text: 'No pull is on record yet.' } : null,
  ];
  return gaps.filter((gap) => gap !== null);
}

function gapsOfTest(
  request: PresetStandingRequest,
  proof: PresetProof | null,
  pullsThere: number,
): readonly StandingGap[] {
  if (typeof request.stopText === 'string') return [{ code: 'advice-stops', text: request.stopText }];
  if (request.dutyPct === null || proof === null) return [noDuty(request)];
  if (pullsThere === 0) return [noPullThere(request.dutyPct, request)];
  return proof.missing;
}

function noDuty({ acceptedDutyPct }: PresetStandingRequest): StandingGap {
  const text =
    typeof acceptedDutyPct === 'number'
      ? `The duty that was found, ${percent(acceptedDutyPct)}, is not stored in the preset yet.`
      : 'No duty is stored yet: the advice has not accepted one.';
  return { code: 'no-duty', text };
}

function noPullThere(dutyPct: number, { gateHoldPct, acceptedDutyPct }: PresetStandingRequest): StandingGap {
  const hold = typeof gateHoldPct === 'number' ? ` and ${percent(gateHoldPct)} gate hold` : '';
  const isOther = typeof acceptedDutyPct === 'number' && Math.abs(acceptedDutyPct - dutyPct) > SAME_PCT;
  const found = isOther ? ` The advice has accepted ${percent(acceptedDutyPct)} duty.` : '';
  const text = `No pull was made at the stored settings, ${percent(dutyPct)} duty${hold}.${found}`;
  return { code: 'no-pull-at-settings', text };
}

const percent = (value: number): string => `${formatNumber(value, Number.isInteger(value) ? 0 : 1)} %`;
