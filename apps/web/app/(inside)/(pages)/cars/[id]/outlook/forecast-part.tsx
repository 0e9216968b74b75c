'use client';

import type { OutlookGrid, Preset, PresetForecast, PresetOutlook } from '@pullbook/contracts';
import { layoutForecastGrid, sayChance, type GridFigures } from '@pullbook/pictures';
import { HelpRow } from '../../../../../../components/help/help-row';
import { Empty, Mind } from '../../../../../../components/marks/marks';
import { PictureFrame } from '../../../../../../components/pictures/picture-frame';
import { usePressureFormat } from '../../../../../../components/pictures/use-pressure-format';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import { EffectsTable } from './effects-table';
import { sayConditions } from './say-conditions';
import styles from './outlook.module.css';

interface ForecastPartProps {
  readonly outlook: PresetOutlook;
  readonly preset: Preset;
}

/** What will this preset peak at in other weather, gear and height, and how likely does it pass the ceiling? */
export function ForecastPart({ outlook: { forecast, forecastMissing }, preset }: ForecastPartProps) {
  const units = useUnits();
  return (
    <section className="sheet stack" aria-labelledby="forecast">
      <h2 id="forecast">Forecast</h2>
      {forecast === null ? (
        <Empty title="No forecast yet.">
          <p>{forecastMissing}</p>
        </Empty>
      ) : (
        <>
          <Mind>
            <p>
              A forecast is no advice to drive. It speaks of the stored settings on this car as it was, and of
              single pulls. The readiness check and the advice come before any pull.
            </p>
            {preset.state === 'proven' || preset.state === 'signed-off' ? null : (
              <p>This preset is not proven: the forecast rests on what pulls there are.</p>
            )}
          </Mind>
          <p>
            In each cell: the chance that a pull passes the ceiling of {units.write(forecast.ceilingKpa)},
            over a bar from the lowest to the highest peak of 95 % of pulls, with the ceiling as an upright. ▲
            and a thick frame: above the workshop&rsquo;s limit of {sayChance(forecast.riskLimit)}. Dashed:
            further out than the pulls were. Hatched: unknown, the pulls do not tell.
          </p>
          <HelpRow words={['chance_of_passing', 'predicted_range', 'ceiling', 'reference_conditions']} />
          <div className={styles.grids}>
            {forecast.grids.map((grid) => (
              <GridFigure key={grid.by} grid={grid} forecast={forecast} units={units} />
            ))}
          </div>
          <EffectsTable effects={forecast.effects} />
          <div>
            <h3>What it rests on</h3>
            <ul className={styles.notes}>
              {forecast.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
              <li>What a grid does not vary: {sayConditions(forecast.reference, units)}.</li>
            </ul>
          </div>
        </>
      )}
    </section>
  );
}

interface GridFigureProps {
  readonly grid: OutlookGrid;
  readonly forecast: PresetForecast;
  readonly units: PersonsUnits;
}

const gridTitles: Readonly<Record<OutlookGrid['by'], string>> = {
  gear: 'By gear',
  height: 'By height above the sea',
  gradient: 'By gradient, uphill positive',
};

function GridFigure({ grid, forecast, units }: GridFigureProps) {
  const format = usePressureFormat();
  return (
    <figure className={styles.figure}>
      <figcaption>
        <h3>{gridTitles[grid.by]}</h3>
      </figcaption>
      <PictureFrame
        leastWidth={260}
        leastHeight={322}
        withTable
        layout={(width) => layoutForecastGrid(gridFigures(grid, forecast, units), { width }, format)}
      />
    </figure>
  );
}

const columnNames: Readonly<Record<OutlookGrid['by'], string>> = {
  gear: 'gear',
  height: 'height, m (standard atmosphere)',
  gradient: 'gradient, %',
};

function gridFigures(
  { by, columns, rows }: OutlookGrid,
  { ceilingKpa, riskLimit }: PresetForecast,
  units: PersonsUnits,
): GridFigures {
  return {
    rowsName: 'intake air',
    columnsName: columnNames[by],
    columns: columns.map(({ value }) => String(value).replace('-', '−')),
    rows: rows.map(({ intakeC, cells }) => ({ label: units.writeTemperature(intakeC), cells })),
    ceilingKpa,
    riskLimit,
  };
}
