'use client';

import type { Preset } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { useUnits } from '../units/use-units';
import { presetStateNames, presetStateShapes } from './preset-state-names';

/** Where a preset stands, what is missing before it can move on, and what its pulls promise so far. */
export function ProofLines({ preset }: Readonly<{ preset: Preset }>) {
  const units = useUnits();
  return (
    <>
      <p>
        <span aria-hidden="true">{presetStateShapes[preset.state]} </span>
        <b>{presetStateNames[preset.state]}</b>
        {preset.missing.length === 0 ? '' : `; missing: ${units.say(preset.missing.join('; '))}`}
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
