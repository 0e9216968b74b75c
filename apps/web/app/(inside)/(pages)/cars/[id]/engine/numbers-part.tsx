'use client';

import type { EnginePoint, EngineSheet } from '@pullbook/contracts';
import { useState } from 'react';
import { ChoiceField } from '../../../../../../components/field/choice-field';
import { HelpRow } from '../../../../../../components/help/help-row';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import { pointName } from './point-name';
import { sayPlace } from './say-place';
import styles from './engine.module.css';

interface Figure {
  readonly name: string;
  readonly value: string;
  readonly why: string;
}

/** The way of air and fuel, and the power that they can make, at one goal. */
export function NumbersPart({ sheet }: Readonly<{ sheet: EngineSheet }>) {
  const units = useUnits();
  const [chosen, setChosen] = useState('');
  const point = sheet.points.find((one) => keyOf(one) === chosen) ?? sheet.points[0];
  const { airC, heightM, barometerAbsKpa } = sheet.air;
  return (
    <section className="sheet stack" aria-labelledby="numbers">
      <h2 id="numbers">Air, fuel and power</h2>
      {sheet.missing.length > 0 ? (
        <p>
          Cannot be reckoned yet. Missing: <b>{sheet.missing.join(', ')}</b>.
        </p>
      ) : null}
      {sheet.missing.length === 0 && point === undefined ? (
        <p>No preset has a target and no limit of the car is known, so there is no boost to reckon at.</p>
      ) : null}
      {point === undefined ? null : (
        <>
          <ChoiceField
            label="At which boost"
            hint={`At the rev limit, ${point.engineSpeedRpm} r/min, in air of ${units.writeTemperature(airC)} at ${heightM} m (${units.write(barometerAbsKpa)} absolute).`}
            value={keyOf(point)}
            onChange={setChosen}
            choices={sheet.points.map((one) => ({ value: keyOf(one), label: pointName(one, units) }))}
          />
          <dl className={styles.figures}>
            {figuresOf(point, sheet, units).map(({ name, value, why }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  <span className={styles.figure}>{value}</span>
                  <span className="soft small">{why}</span>
                </dd>
              </div>
            ))}
          </dl>
          <HelpRow words={['volumetric_efficiency', 'injector_duty', 'surge_margin', 'ceiling']} />
        </>
      )}
    </section>
  );
}

const keyOf = ({ at, presetId }: EnginePoint) => `${at} ${presetId ?? ''}`;

function figuresOf(point: EnginePoint, sheet: EngineSheet, units: PersonsUnits): Figure[] {
  const efficiency = `${point.efficiencyPct.toFixed(0)} %${isToldByMap(point, sheet) ? ' as the map tells there' : ''}`;
  return [
    {
      name: 'Power at the crank',
      value: `${point.power.lowKw.toFixed(0)} to ${point.power.highKw.toFixed(0)} kW`,
      why: sayPower(point),
    },
    {
      name: 'Injector duty',
      value: point.injectorDutyPct === null ? 'not known' : `${point.injectorDutyPct.toFixed(0)} %`,
      why: sayInjectors(point, sheet),
    },
    {
      name: 'Charge temperature',
      value: units.writeTemperature(point.chargeC),
      why: 'In the manifold, after the charge cooler.',
    },
    {
      name: 'Out of the compressor',
      value: units.writeTemperature(point.outletC),
      why: `Pressing air heats it; compressor efficiency ${efficiency}.`,
    },
    {
      name: 'Pressure ratio',
      value: point.pressureRatio.toFixed(2),
      why: 'What the compressor has to make, losses in filter and cooler included.',
    },
    {
      name: 'Charge density',
      value: `${point.densityRatio.toFixed(2)} ×`,
      why: 'As dense as the air outside: what the boost is worth to the engine.',
    },
    {
      name: 'Air',
      value: `${(point.airKgPerS * 1000).toFixed(0)} g/s`,
      why: 'By displacement, engine speed, volumetric efficiency and density.',
    },
    {
      name: 'Fuel',
      value: `${(point.fuelKgPerS * 1000).toFixed(1)} g/s`,
      why: 'Air over the air-fuel ratio.',
    },
    ...(point.place === null
      ? []
      : [{ name: 'On the compressor map', value: sayPlace(point.place), why: sayMargins(point) }]),
  ];
}

/** Outside the map, and on one without efficiencies, the figure that was entered or assumed is used. */
const isToldByMap = ({ place }: EnginePoint, { map }: EngineSheet) =>
  place?.place === 'inside' && (map?.lines.every((line) => line.efficiencyRatios !== null) ?? false);

function sayPower({ power }: EnginePoint): string {
  const { powerKw, torqueNm, levelRatio, airUncertaintyPct, mixtureUncertaintyPct, fuelUncertaintyPct } =
    power;
  const level = (levelRatio * 100).toFixed(0);
  return `About ${powerKw.toFixed(0)} kW, ${torqueNm.toFixed(0)} N·m; ${level} % band from uncertainties of ${airUncertaintyPct} % in air, ${mixtureUncertaintyPct} % in mixture, ${fuelUncertaintyPct} % in fuel for each kilowatt-hour.`;
}

function sayInjectors({ injectorDutyPct }: EnginePoint, { inputs }: EngineSheet): string {
  if (injectorDutyPct === null) return 'Enter number, flow and pressure of the injectors.';
  const highest = inputs.find(({ key }) => key === 'highestInjectorDutyPct')?.value ?? null;
  if (injectorDutyPct > 100) return '▲ More than they can deliver: the mixture would go lean.';
  if (highest !== null && injectorDutyPct > highest) return `▲ Above the ${highest} % to keep to.`;
  return `Share of each cycle that they stay open; keep to ${highest} % or less.`;
}

function sayMargins({ place }: EnginePoint): string {
  const parts = [
    sayIf(place?.surgeMarginPct, (pct) => `${pct.toFixed(0)} % of flow away from surge`),
    sayIf(place?.chokeMarginPct, (pct) => `${pct.toFixed(0)} % from choke`),
    sayIf(place?.shaftSpeedRpm, (rpm) => `the shaft at ${Math.round(rpm / 1000)} 000 r/min`),
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `${parts.join(', ')}.`;
}

function sayIf(value: number | null | undefined, say: (known: number) => string): string {
  return value === null || value === undefined ? '' : say(value);
}
