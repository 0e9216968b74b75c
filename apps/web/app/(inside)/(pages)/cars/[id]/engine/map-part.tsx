'use client';

import type { EngineSheet, PullOnMap } from '@pullbook/contracts';
import { layoutCompressorMap, type MapFigures } from '@pullbook/pictures';
import dynamic from 'next/dynamic';
import Link from 'next/link';
import { useState } from 'react';
import { Button } from '../../../../../../components/button/button';
import { Dialog } from '../../../../../../components/dialog/dialog';
import { Empty, Skeleton } from '../../../../../../components/marks/marks';
import { PictureFrame } from '../../../../../../components/pictures/picture-frame';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import { pointName } from './point-name';
import { sayPlace } from './say-place';
import styles from './engine.module.css';

const MapForm = dynamic(() => import('./map-form').then((part) => part.MapForm), {
  loading: () => <Skeleton lines={6} label="Opening the map" />,
});

const mapHeight = 400;

/** The compressor map as the workshop entered it, with the engine's lines and the pulls drawn on it. */
export function MapPart({ sheet }: Readonly<{ sheet: EngineSheet }>) {
  const units = useUnits();
  const [isOpen, setOpen] = useState(false);
  const { map } = sheet;
  return (
    <section className="sheet stack" aria-labelledby="map">
      <h2 id="map">Compressor map</h2>
      {map === null ? (
        <Empty title="No map of this compressor yet">
          <p>
            Enter its points as CSV: where surge and choke lie then counts for the ceiling, and the pulls are
            drawn on it.
          </p>
        </Empty>
      ) : (
        <>
          <MapPicture sheet={sheet} lines={map.lines} units={units} />
          <p className="soft small">
            Flow as in air of{' '}
            {map.reference === 'gas-stand' ? '298 K and 100 kPa' : '288.15 K and 101.325 kPa'}.
            {map.source === '' ? '' : ` Source: ${map.source}.`} Shaft speeds in thousands of r/min. Distances
            from surge and choke are shares of flow at the same pressure ratio.
          </p>
          <PullList pulls={sheet.pulls} units={units} />
        </>
      )}
      <p>
        <Button kind={map === null ? 'act' : 'plain'} onClick={() => setOpen(true)}>
          {map === null ? 'Enter a map' : 'Change the map'}
        </Button>
      </p>
      {isOpen ? (
        <Dialog title="Compressor map" onClose={() => setOpen(false)} wide>
          <MapForm sheet={sheet} onDone={() => setOpen(false)} />
        </Dialog>
      ) : null}
    </section>
  );
}

interface MapPictureProps {
  readonly sheet: EngineSheet;
  readonly lines: NonNullable<EngineSheet['map']>['lines'];
  readonly units: PersonsUnits;
}

function MapPicture({ sheet, lines, units }: MapPictureProps) {
  const figures = figuresOf(sheet, lines, units);
  return (
    <>
      <PictureFrame
        leastWidth={240}
        leastHeight={mapHeight}
        withTable
        layout={(width) => layoutCompressorMap(figures, { width, height: mapHeight })}
      />
      <ul className={styles.key}>
        {figures.goals.map(({ letter, name }) => (
          <li key={letter}>
            <b>{letter}</b> {name}
          </li>
        ))}
        {figures.pulls.length === 0 ? null : (
          <li>
            <b>1, 2 …</b> pulls at their peak; square: it left the map
          </li>
        )}
      </ul>
    </>
  );
}

function figuresOf(sheet: EngineSheet, lines: MapPictureProps['lines'], units: PersonsUnits): MapFigures {
  const goals = sheet.points.filter(({ at }) => at !== 'ceiling');
  return {
    lines: lines.map(({ shaftSpeedRpm, flowsKgPerS, pressureRatios, efficiencyRatios }) => ({
      shaftSpeedRpm,
      efficienciesPct: efficiencyRatios?.map((ratio) => ratio * 100) ?? null,
      spots: flowsKgPerS.map((flowKgPerS, index) => ({
        flowKgPerS,
        pressureRatio: pressureRatios[index] ?? 1,
      })),
    })),
    goals: goals.map((point, index) => ({
      letter: String.fromCharCode(65 + (index % 26)),
      name: pointName(point, units),
      spots: point.run,
    })),
    pulls: sheet.pulls.flatMap((pull) => {
      const { number, presetName, run, peak } = pull;
      if (peak === null) return [];
      return [
        {
          number,
          name: presetName,
          spots: run,
          peak,
          isOutside: isOutside(pull),
          standing: standingOf(pull),
        },
      ];
    }),
  };
}

const isOutside = ({ peakPlace, leastSurgeMarginPct, leastChokeMarginPct }: PullOnMap) =>
  (peakPlace !== null && peakPlace.place !== 'inside' && peakPlace.place !== 'below-map') ||
  (leastSurgeMarginPct ?? 0) < 0 ||
  (leastChokeMarginPct ?? 0) < 0;

function standingOf({ peakPlace, leastSurgeMarginPct, leastChokeMarginPct }: PullOnMap): string {
  const parts = [
    peakPlace === null ? '' : `${sayPlace(peakPlace)} at its peak`,
    leastSurgeMarginPct === null ? '' : `nearest to surge ${leastSurgeMarginPct.toFixed(0)} %`,
    leastChokeMarginPct === null ? '' : `to choke ${leastChokeMarginPct.toFixed(0)} %`,
  ];
  return parts.filter(Boolean).join(', ');
}

function PullList({ pulls, units }: Readonly<{ pulls: readonly PullOnMap[]; units: PersonsUnits }>) {
  const placed = pulls.filter(({ peak }) => peak !== null);
  const typed = pulls.length - placed.length;
  return (
    <>
      {placed.length === 0 ? null : (
        <ul className={styles.lines}>
          {placed.map((pull) => (
            <li key={pull.pullId}>
              <b>
                {pull.logId === null ? (
                  `Pull ${pull.number}`
                ) : (
                  <Link href={`/logs/${pull.logId}`}>Pull {pull.number}</Link>
                )}
              </b>
              <span className="grow">
                {pull.presetName}, {units.peak(pull.peakKpa)} {units.pressureWord}
              </span>
              <span className={`soft small ${styles.below}`}>
                {standingOf(pull)}
                {pull.airMeasured ? '' : '; air of the day not measured'}
              </span>
            </li>
          ))}
        </ul>
      )}
      {typed === 0 ? null : (
        <p className="soft small">
          {typed} of the last {pulls.length} pulls {typed === 1 ? 'was' : 'were'} typed, without engine
          speeds, so {typed === 1 ? 'it has' : 'they have'} no place on the map. Drop a log to see where a
          pull runs.
        </p>
      )}
    </>
  );
}
