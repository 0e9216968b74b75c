'use client';

import type { Car, Controller, DutyAdvice, Preset, Pull } from '@pullbook/contracts';
import type { ChartFigures } from '@pullbook/pictures';
import dynamic from 'next/dynamic';
import { KeptFree, WhenNear } from '../../../../components/near/when-near';
import { nextRange } from '../../../../components/pictures/next-range';
import { dutyRangeOf } from './held-values';
import styles from './visit.module.css';

// Below what is needed to drive and to write down: it loads when somebody scrolls to it.
const chartHeight = 280;
const ResponseChart = dynamic(
  () => import('../../../../components/pictures/response-chart').then((part) => part.ResponseChart),
  { loading: () => <KeptFree leastHeight={chartHeight} /> },
);

interface ResponsePartProps {
  readonly preset: Preset;
  readonly car: Car;
  readonly controller: Controller | null;
  readonly pulls: readonly Pull[];
  readonly advice: DutyAdvice | null;
}

/** How boost answers duty on this car: pulls, predicted curve and band, target and ceiling. */
export function ResponsePart({ preset, car, controller, pulls, advice }: ResponsePartProps) {
  const figures = chartOf({ preset, car, controller, pulls, advice });
  if (figures.pulls.length === 0 && figures.curve.length === 0) return null;
  return (
    <figure className={styles.response}>
      <figcaption>Response: peak against duty</figcaption>
      <WhenNear leastHeight={chartHeight}>
        <ResponseChart figures={figures} />
      </WhenNear>
    </figure>
  );
}

function chartOf({ preset, car, controller, pulls, advice }: ResponsePartProps): ChartFigures {
  const range = nextRange(advice);
  const duty = advice?.duty ?? null;
  return {
    dutyRange: dutyRangeOf(controller),
    baseKpa: car.mechanics.actuatorSpringKpa,
    targetKpa: preset.targetKpa,
    toleranceKpa: preset.toleranceKpa,
    ceilingKpa: preset.ceilingKpa,
    pulls: pulls.map((pull) => ({
      number: pull.number,
      dutyPct: pull.dutyPct,
      peakKpa: pull.peakKpa,
      isVoid: pull.voidedAt !== null || !pull.usable,
    })),
    curve: advice?.curve ?? [],
    next: range === null || duty === null ? null : { dutyPct: duty, ...range },
  };
}
