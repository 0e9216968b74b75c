'use client';

import type { FoundSound, PresetEvidence } from '@pullbook/contracts';
import type { ReactNode } from 'react';
import { Help } from '../../../../../components/help/help';
import type { HelpWord } from '../../../../../components/help/words';
import { Mind } from '../../../../../components/marks/marks';
import { sayDate } from '../../../../../components/time/say-when';
import { useUnits, type PersonsUnits } from '../../../../../components/units/use-units';
import { DriftBeforeSigning } from './drift-before-signing';
import styles from './sign-off.module.css';

interface EvidencePartProps {
  readonly evidence: PresetEvidence;
  /** Something in front of the name, such as the box to choose the preset. */
  readonly lead?: ReactNode;
}

/** What the data say of one preset: filled in by the book and not by hand. */
export function EvidencePart({ evidence, lead }: EvidencePartProps) {
  const units = useUnits();
  return (
    <section className="sheet stack" aria-label={`Preset ${evidence.slot} ${evidence.name}`}>
      {lead ?? (
        <h3>
          {evidence.slot} {evidence.name}, revision {evidence.revision}
        </h3>
      )}
      <dl className={styles.facts}>
        {factsOf(evidence, units).map(([name, value]) => (
          <div key={name}>
            <dt>{nameOf(name)}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <DriftBeforeSigning presetId={evidence.presetId} />
      {evidence.missing.length === 0 ? null : (
        <Mind title="Cannot be signed off yet">
          <ul>
            {evidence.missing.map((one) => (
              <li key={one}>{units.say(one)}</li>
            ))}
          </ul>
        </Mind>
      )}
    </section>
  );
}

/** Facts whose name explains itself when pressed. */
const explained: Readonly<Record<string, HelpWord>> = {
  Target: 'target',
  Ceiling: 'ceiling',
  'Duty stored': 'duty',
  'Peaks at the duty': 'spread_of_pulls',
  Proven: 'proven',
  'Heat-soaked pull': 'heat-soaked_pull',
};

function nameOf(name: string): ReactNode {
  const word = explained[name];
  return word === undefined ? name : <Help word={word}>{name}</Help>;
}

const yes = (isTrue: boolean, word: string, otherwise: string) => (isTrue ? `✓ ${word}` : `○ ${otherwise}`);

function factsOf(evidence: PresetEvidence, units: PersonsUnits): ReadonlyArray<readonly [string, string]> {
  return [
    ['Target', sayTarget(evidence, units)],
    ['Ceiling', evidence.ceilingKpa === null ? 'none agreed' : units.write(evidence.ceilingKpa)],
    ['Duty stored', evidence.dutyPct === null ? 'none yet' : `${evidence.dutyPct} %`],
    ['Peaks at the duty', sayPeaks(evidence, units)],
    ['Usable pulls', sayPulls(evidence)],
    ['Duty accepted', yes(evidence.accepted, 'it makes the target', 'not yet')],
    ['Proven', yes(evidence.proven, sayProof(evidence, units), units.say(evidence.unproven.join('; ')))],
    ['Ceiling kept', sayCeilingKept(evidence)],
    ['Heat-soaked pull', yes(evidence.heatSoakedPull, 'present', 'none')],
    ...sayLooks(evidence),
  ];
}

/** Told of the pulls at the accepted duty; before there is one, nothing is said of the ceiling either way. */
function sayCeilingKept({ ceilingKept, accepted }: PresetEvidence): string {
  if (!ceilingKept && !accepted) return '○ not shown before a duty is accepted';
  return yes(ceilingKept, 'no pull passed it', 'a pull passed it');
}

function sayProof({ proof }: PresetEvidence, units: PersonsUnits): string {
  if (proof === null || proof.lowKpa === null || proof.highKpa === null) return 'by its pulls';
  const share = Math.round(proof.coverageRatio * 100);
  const range = `${units.peak(proof.lowKpa)} to ${units.peak(proof.highKpa)} ${units.pressureWord}`;
  return `${share} % of all pulls within ${range}, ${Math.round(proof.confidenceRatio * 100)} % confidence`;
}

function sayTarget({ targetKpa, toleranceKpa }: PresetEvidence, units: PersonsUnits): string {
  return targetKpa === null ? 'none agreed' : `${units.figure(targetKpa)} ± ${units.write(toleranceKpa)}`;
}

function sayPeaks(
  { meanPeakKpa, lowestPeakKpa, highestPeakKpa }: PresetEvidence,
  units: PersonsUnits,
): string {
  if (meanPeakKpa === null) return 'none yet';
  const mean = `mean ${units.peak(meanPeakKpa)} ${units.pressureWord}`;
  if (lowestPeakKpa === null || highestPeakKpa === null) return mean;
  return `${mean}, from ${units.peak(lowestPeakKpa)} to ${units.peak(highestPeakKpa)}`;
}

function sayLooks({ foundSound }: PresetEvidence): ReadonlyArray<readonly [string, string]> {
  return foundSound.length === 0 ? [] : [['Looked over, sound', foundSound.map(sayLook).join('; ')]];
}

function sayLook({ afterPull, at, note, by }: FoundSound): string {
  return `after pull ${afterPull}${note === '' ? '' : `: ${note}`} (${by}, ${sayDate(at)})`;
}

function sayPulls({ usablePullCount, provingPullNumbers }: PresetEvidence): string {
  if (provingPullNumbers.length === 0) return String(usablePullCount);
  return `${usablePullCount}; proved by ${provingPullNumbers.join(', ')}`;
}
