'use client';

import type { PresetDrift, PresetOutlook } from '@pullbook/contracts';
import { layoutDriftChart, type DriftFigures } from '@pullbook/pictures';
import { HelpRow } from '../../../../../../components/help/help-row';
import { Empty } from '../../../../../../components/marks/marks';
import { PictureFrame } from '../../../../../../components/pictures/picture-frame';
import { usePressureFormat } from '../../../../../../components/pictures/use-pressure-format';
import { useUnits } from '../../../../../../components/units/use-units';
import { sayConditions } from './say-conditions';
import styles from './outlook.module.css';

const chartHeight = 300;

/** Has this preset drifted since it was proven? Both charts in one picture, the verdict in words, what it rests on. */
export function DriftPart({ outlook }: Readonly<{ outlook: PresetOutlook }>) {
  const format = usePressureFormat();
  const units = useUnits();
  const { drift, driftMissing, reference } = outlook;
  return (
    <section className="sheet stack" aria-labelledby="drift">
      <h2 id="drift">Drift</h2>
      {drift === null ? (
        <Empty title="Drift is not watched yet.">
          <p>{driftMissing}</p>
        </Empty>
      ) : (
        <>
          <Verdict drift={drift} />
          <HelpRow words={['drift', 'reference_conditions', 'spread_of_pulls']} />
          <figure className={styles.figure}>
            <figcaption className="small soft">
              Peaks at reference conditions, pull by pull. Pale: the visit they are held against. Dashed:
              limits of a single pull (Shewhart chart). Line: moving average (EWMA chart), dotted: its limits.
              Square: outside.
            </figcaption>
            <PictureFrame
              leastWidth={260}
              leastHeight={chartHeight}
              withTable
              layout={(width) =>
                layoutDriftChart(driftFigures(outlook, drift), { width, height: chartHeight }, format)
              }
            />
          </figure>
          <div>
            <h3>What it rests on</h3>
            <ul className={styles.notes}>
              {drift.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
              {reference === null ? null : <li>Reference: {sayConditions(reference, units)}.</li>}
            </ul>
          </div>
        </>
      )}
    </section>
  );
}

function Verdict({ drift }: Readonly<{ drift: PresetDrift }>) {
  const isAlarm = drift.alarm !== null;
  return (
    <div className={isAlarm ? styles.alarm : styles.quiet} role={isAlarm ? 'alert' : 'note'}>
      <p>
        <span aria-hidden="true">{isAlarm ? '▲ ' : '✓ '}</span>
        <b>{isAlarm ? 'Drift alarm. ' : ''}</b>
        {drift.text}
      </p>
      {isAlarm ? (
        <p>
          Look for a leak, a loose line or a tired actuator before you touch a setting. The alarm stands until
          the preset is signed off anew or its settings change.
        </p>
      ) : null}
    </div>
  );
}

function driftFigures({ pulls, ...goal }: PresetOutlook, drift: PresetDrift): DriftFigures {
  const averages = new Map(drift.averages.map((point) => [point.pullId, point]));
  const ofPull = new Map(pulls.map((pull) => [pull.pullId, pull]));
  const since = drift.singles.flatMap((single) => {
    const [pull, average] = [ofPull.get(single.pullId), averages.get(single.pullId)];
    if (pull === undefined || average === undefined) return [];
    return [
      {
        ...{ visitNumber: pull.visitNumber, number: pull.number, kpa: single.plottedKpa },
        ...{ lowKpa: single.lowKpa, highKpa: single.highKpa, isOut: single.isOut },
        ...{ averageKpa: average.plottedKpa, averageLowKpa: average.lowKpa },
        ...{ averageHighKpa: average.highKpa, isAverageOut: average.isOut },
      },
    ];
  });
  const firedAt = drift.singles.findIndex(({ pullId }) => pullId === drift.alarm?.pullId);
  return {
    baseline: pulls
      .filter(({ part }) => part === 'baseline')
      .map(({ visitNumber, number, referenceKpa, peakKpa }) => {
        return { visitNumber, number, kpa: referenceKpa ?? peakKpa };
      }),
    since,
    centreKpa: drift.centreKpa,
    targetKpa: goal.targetKpa,
    toleranceKpa: goal.toleranceKpa,
    ceilingKpa: goal.ceilingKpa,
    firedAt: firedAt === -1 ? null : firedAt,
  };
}
