import type { Preset, PresetRevision, Pull, TuningSession, Visit } from '@pullbook/contracts';
import { sayDate } from '../../../../../../components/time/say-when';
import type { PersonsUnits } from '../../../../../../components/units/units-of';
import { compareFigure, compareText, type Compared, type ComparedGroup, type FigureForm } from './compared';
import { goalIn, perCent } from './compare-revisions';

/** A visit with what was driven in it. */
export interface VisitMaterial {
  readonly visit: Visit;
  readonly sessions: readonly TuningSession[];
  readonly pulls: readonly Pull[];
}

/** What both visits are told by: the car's presets and all of their revisions. */
export interface PresetsOfCar {
  readonly presets: readonly Preset[];
  readonly revisionsOf: (presetId: string) => readonly PresetRevision[];
}

const placeWords = { 'dyno-cell': 'dyno cell', 'closed-course': 'closed course' } as const;
const humidity: FigureForm = { write: (value) => `${Math.round(value)} %`, least: 0.5 };
const count: FigureForm = { write: String, least: 0.5, words: ['more', 'fewer'] };

/** What is different in the right one of two visits of a car: conditions first, then preset by preset. */
export function compareVisits(
  left: VisitMaterial,
  right: VisitMaterial,
  { presets, revisionsOf }: PresetsOfCar,
  units: PersonsUnits,
): readonly ComparedGroup[] {
  const driven = presets.filter(({ id }) =>
    [left, right].some(({ pulls }) => pulls.some(({ presetId }) => presetId === id)),
  );
  return [
    { title: 'Conditions', lines: compareConditions(left, right, units) },
    ...driven.map((preset) => {
      const sides = [left, right].map(({ pulls }) => drivenOf(pulls, preset.id, revisionsOf(preset.id)));
      const [a = nothingDriven, b = nothingDriven] = sides;
      return { title: `${preset.slot} ${preset.name}`, lines: comparePreset(a, b, units) };
    }),
  ];
}

/** Place and air of a tuning session, null where there was none or nobody measured. */
function conditionsOf(session: TuningSession | undefined) {
  if (session === undefined) return nowhere;
  const { place, placeKind, air, fuel, driver } = session;
  return { ...air, fuel, driver, place: `${place}, ${placeWords[placeKind]}` };
}

const nowhere = {
  ...{ temperatureC: null, pressureAbsKpa: null, humidityPct: null, fuel: null, driver: null, place: null },
};

/** The air and place of the last tuning session: that in which the settings were found. */
function compareConditions(left: VisitMaterial, right: VisitMaterial, units: PersonsUnits): Compared[] {
  const a = conditionsOf(left.sessions.at(-1));
  const b = conditionsOf(right.sessions.at(-1));
  return [
    compareText('Began', sayDate(left.visit.createdAt), sayDate(right.visit.createdAt)),
    compareText('Place', a.place, b.place),
    compareFigure('Air temperature', a.temperatureC, b.temperatureC, degreesIn(units)),
    compareFigure('Air pressure', a.pressureAbsKpa, b.pressureAbsKpa, peakIn(units)),
    compareFigure('Humidity', a.humidityPct, b.humidityPct, humidity),
    compareText('Fuel', a.fuel, b.fuel),
    compareText('Driver', a.driver, b.driver),
  ];
}

/** A difference of temperatures has no zero point to shift. */
const degreesIn = ({ writeTemperature, temperature }: PersonsUnits): FigureForm => ({
  write: writeTemperature,
  writeDifference: (degrees) =>
    temperature === 'F' ? `${(1.8 * degrees).toFixed(1)} °F` : `${degrees.toFixed(1)} °C`,
  least: 0.05,
});

const peakIn = (units: PersonsUnits): FigureForm => ({
  write: (kpa) => `${units.peak(kpa)} ${units.pressureWord}`,
  least: 0.05,
});

/** How one preset was driven in one visit, by its last usable pull. */
interface Driven {
  readonly revision: PresetRevision | null;
  readonly dutyPct: number | null;
  readonly holdPct: number | null;
  readonly meanPeakKpa: number | null;
  readonly highestPeakKpa: number | null;
  readonly usableCount: number;
}

const nothingDriven: Driven = {
  ...{
    revision: null,
    dutyPct: null,
    holdPct: null,
    meanPeakKpa: null,
    highestPeakKpa: null,
    usableCount: 0,
  },
};

function drivenOf(pulls: readonly Pull[], presetId: string, revisions: readonly PresetRevision[]): Driven {
  const standing = pulls.filter((pull) => pull.presetId === presetId && pull.voidedAt === null);
  const usable = standing.filter((pull) => pull.usable);
  const last = usable.at(-1);
  if (last === undefined) return nothingDriven;
  const alike = usable.filter(({ dutyPct, holdPct }) => dutyPct === last.dutyPct && holdPct === last.holdPct);
  return {
    revision: revisions.find(({ revision }) => revision === last.presetRevision) ?? null,
    dutyPct: last.dutyPct,
    holdPct: last.holdPct,
    meanPeakKpa: alike.reduce((sum, { peakKpa }) => sum + peakKpa, 0) / alike.length,
    highestPeakKpa: Math.max(...standing.map(({ peakKpa }) => peakKpa)),
    usableCount: usable.length,
  };
}

function comparePreset(left: Driven, right: Driven, units: PersonsUnits): Compared[] {
  const goal = goalIn(units);
  const peak = peakIn(units);
  const of = (side: Driven, value: 'targetKpa' | 'toleranceKpa' | 'ceilingKpa') =>
    side.revision?.[value] ?? null;
  const mean = compareFigure('Mean peak at these', left.meanPeakKpa, right.meanPeakKpa, peak);
  const isAlike = left.dutyPct === right.dutyPct && left.holdPct === right.holdPct;
  return [
    compareFigure('Target', of(left, 'targetKpa'), of(right, 'targetKpa'), goal),
    compareFigure('Tolerance, ±', of(left, 'toleranceKpa'), of(right, 'toleranceKpa'), goal),
    compareFigure('Ceiling', of(left, 'ceilingKpa'), of(right, 'ceilingKpa'), goal),
    compareFigure('Duty last driven', left.dutyPct, right.dutyPct, perCent),
    compareFigure('Gate hold last driven', left.holdPct, right.holdPct, perCent),
    mean.isSame || !isAlike ? mean : { ...mean, change: `${mean.change} at the same settings` },
    compareFigure('Highest peak', left.highestPeakKpa, right.highestPeakKpa, peak),
    compareFigure('Usable pulls', left.usableCount, right.usableCount, count),
  ];
}
