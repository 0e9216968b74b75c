'use client';

import type { DutyAdvice, Preset } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { useUnits } from '../units/use-units';
import { presetStateNames, presetStateShapes } from './preset-state-names';

interface ProofLinesProps {
  readonly preset: Preset;
  /** The advice that is shown beside, if one is. */
  readonly advice?: DutyAdvice | null;
}

const listed = (missing: string): string => (missing === '' ? '' : `missing: ${missing}`);

/** Where a preset stands, what is missing before it can move on, and what its pulls promise so far. */
export function ProofLines({ preset, advice = null }: ProofLinesProps) {
  const units = useUnits();
  // Where the advice says stop, why stands above, large.
  const missing = advice?.action === 'stop' ? 'stopped' : listed(units.say(preset.missing.join('; ')));
  return (
    <>
      <p>
        <span aria-hidden="true">{presetStateShapes[preset.state]} </span>
        <b>{presetStateNames[preset.state]}</b>
        {missing === '' ? '' : `; ${missing}`}
      </p>
      <Promise proof={preset.proof} />
    </>
  );
}

/** The tolerance interval in plain words, with the pulls that it rests on. */
function Promise({ proof }: Readonly<{ proof: Preset['proof'] }>) {
  const units = useUnits();
  if (proof === null || proof.lowKpa === null || proof.highKpa === null) return null;
  const percent = (share: number) => `${formatNumber(share * 100, 0)} %`;
  const range = `${units.peak(proof.lowKpa)} to ${units.peak(proof.highKpa)} ${units.pressureWord}`;
  return (
    <p className="small soft">
      With {percent(proof.confidenceRatio)} confidence, {percent(proof.coverageRatio)} of all pulls peak at{' '}
      {range}; from {proof.pullNumbers.length === 1 ? 'pull' : 'pulls'} {proof.pullNumbers.join(', ')} at the
      stored settings, {proof.heatSoakedPulls} of them heat-soaked.
    </p>
  );
}
