'use client';

import type { PracticeEnding, PracticeSheet, PracticeTruth } from '@pullbook/practice-car';
import { useUnits, type PersonsUnits } from '../../../../components/units/use-units';
import { practiceRules } from '../../../../practice/practice-rules';
import type { TakenPull } from '../../../../practice/practice-question';
import styles from './practice.module.css';
import { sayFault } from './say-fault';

interface TruthFactsProps {
  readonly sheet: PracticeSheet;
  readonly pulls: readonly TakenPull[];
  readonly ending: PracticeEnding;
  readonly truth: PracticeTruth;
}

/** The truth in figures. */
export function TruthFacts({ sheet, pulls, ending, truth }: TruthFactsProps) {
  const units = useUnits();
  const facts: readonly (readonly [string, string])[] = [
    ...(ending.kind === 'accept' ? [sayAccepted(sheet, ending.duty, truth, units)] : []),
    [
      'Lowest duty that makes the target',
      truth.goodDuty === null ? 'none: the target is more than this car makes' : `${truth.goodDuty} %`,
    ],
    ['Fault', sayFaultTold(truth.fault)],
    ['Pulls', sayCount(pulls.length, truth.fewestPulls)],
  ];
  return (
    <section className={`sheet ${styles.facts}`} aria-labelledby="practice-truth">
      <h2 id="practice-truth">What the car was</h2>
      <dl>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function sayAccepted(
  { goal }: PracticeSheet,
  duty: number,
  { acceptedMeanKpa }: PracticeTruth,
  units: PersonsUnits,
): readonly [string, string] {
  const meanKpa = acceptedMeanKpa ?? 0;
  const isInside = Math.abs(meanKpa - goal.targetKpa) <= goal.toleranceKpa;
  const where = isInside ? 'inside the tolerance' : 'outside the tolerance';
  return [
    `True mean at ${duty} %`,
    `${units.peak(meanKpa)} ${units.pressureWord}, ${where} of ${units.write(goal.targetKpa)} ± ${units.figure(goal.toleranceKpa)}`,
  ];
}

function sayFaultTold(fault: PracticeTruth['fault']): string {
  if (fault === null) return 'none';
  const { name, fromPull, seenAtPull } = fault;
  if (seenAtPull === null) return `${sayFault(name)}, from pull ${fromPull} on; none of your pulls showed it`;
  return seenAtPull === fromPull
    ? `${sayFault(name)}, to be seen at once at pull ${seenAtPull}`
    : `${sayFault(name)}, from pull ${fromPull} on, first to be seen at pull ${seenAtPull}`;
}

function sayCount(count: number, fewest: number | null): string {
  const yours = `${count} driven`;
  if (fewest === null) return yours;
  const confirmed = fewest - 1 + practiceRules.requiredPulls;
  return `${yours}; one who knows the curve and keeps the step rule needs ${fewest}, or ${confirmed} with the confirming pulls`;
}
