import { CarLimits, Mechanics, PresetKind, SettingRange, type DriftAlarm } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import type { pageArguments } from '../plumbing/paging.js';
import type { AdvicePull } from '@pullbook/next-pull';
import { driftAlarmOf } from './drift-alarm-of.js';
import { earlierSpreads, type EarlierSpread } from './earlier-spreads.js';
import type { ControllerAbilities } from './check-preset-values.js';
import type { PresetValues } from './preset-values.js';

/** What presets are checked against: the car that they belong to. */
export interface PresetCar {
  readonly id: string;
  readonly limits: CarLimits;
  readonly mechanics: Mechanics;
  /** The compressor map as it stands in the book. */
  readonly storedMap: unknown;
  /** Peak with the solenoid idle as far as the spring tells it, kPa gauge. */
  readonly baseKpa: number | null;
  readonly controller: (ControllerAbilities & { readonly isClosedLoop: boolean }) | null;
}

/** A standing pull as state, proof and advice see it. */
export interface PresetPull extends AdvicePull {
  readonly holdPct: number | null;
  readonly heatSoaked: boolean;
  /** Timed override only: whether it was on, and how long it was seen to hold. */
  readonly overrideOn: boolean | null;
  readonly heldForS: number | null;
}

/** A preset of the book with all that its state and its advice follow from. */
export interface PresetRecord {
  readonly id: string;
  readonly car: PresetCar;
  readonly revision: number;
  readonly signedOffRevision: number | null;
  readonly isReplaced: boolean;
  readonly createdAt: Date;
  readonly values: PresetValues;
  /** Standing pulls of the newest visit in which it was pulled, in order. */
  readonly pulls: readonly PresetPull[];
  /** How far its peaks scattered on earlier visits. */
  readonly spreads: readonly EarlierSpread[];
  /** The drift alarm that stands. */
  readonly drift: DriftAlarm | null;
}

const pullFields = {
  ...{ visitId: true, number: true, dutyPct: true, holdPct: true, peakKpa: true },
  ...{ usable: true, heatSoaked: true, overrideOn: true, heldForS: true, foundSoundAt: true },
} as const;

type PageArguments = Partial<ReturnType<typeof pageArguments>>;

/** Which presets to load: by id, or all of a car or of several. */
type PresetFilter = { readonly id: string } | { readonly carId: string | { in: string[] } };

/** Loads presets with car, controller, newest revision and the pulls that count. In slot order, older first. */
export async function loadPresets(
  db: WorkshopTransaction,
  where: PresetFilter,
  page: PageArguments = {},
): Promise<PresetRecord[]> {
  const rows = await db.preset.findMany({
    ...page,
    where,
    orderBy: [{ slot: 'asc' }, { id: 'asc' }],
    include: {
      car: { include: { controller: true } },
      revisions: { orderBy: { revision: 'desc' }, take: 1 },
      pulls: {
        where: { voidedAt: null },
        orderBy: [{ visit: { number: 'desc' } }, { number: 'asc' }],
        select: pullFields,
      },
      driftAlarms: { where: { clearedAt: null }, orderBy: { id: 'asc' }, take: 1 },
    },
  });
  return rows.map(({ car, revisions, pulls, driftAlarms, ...row }) => ({
    id: row.id,
    car: presetCarOf(car),
    revision: row.revision,
    signedOffRevision: row.signedOffRevision,
    isReplaced: row.replacedAt !== null,
    createdAt: row.createdAt,
    values: valuesOf(row.id, revisions[0]),
    pulls: pulls.filter((pull) => pull.visitId === pulls[0]?.visitId).map(presetPullOf),
    spreads: earlierSpreads(pulls, pulls[0]?.visitId),
    drift: row.replacedAt === null ? driftAlarmOf(driftAlarms[0]) : null,
  }));
}

/**
 * One preset of this workshop.
 *
 * @throws DomainError not-found
 */
export async function loadPreset(db: WorkshopTransaction, presetId: string): Promise<PresetRecord> {
  const [preset] = await loadPresets(db, { id: presetId });
  if (preset === undefined) throw new DomainError('not-found', 'this workshop has no such preset');
  return preset;
}

/**
 * The car that presets are checked against.
 *
 * @throws DomainError not-found
 */
export async function loadPresetCar(db: WorkshopTransaction, carId: string): Promise<PresetCar> {
  const car = await db.car.findFirst({ where: { id: carId }, include: { controller: true } });
  if (car === null) throw new DomainError('not-found', 'this workshop has no such car');
  return presetCarOf(car);
}

interface CarRow {
  readonly id: string;
  readonly limits: unknown;
  readonly mechanics: unknown;
  readonly compressorMap: unknown;
  readonly controller: {
    readonly presetSlots: number;
    readonly hasTimedOverride: boolean;
    readonly loop: string;
    readonly dutyPct: unknown;
    readonly holdPct: unknown;
    readonly correction: unknown;
  } | null;
}

function presetCarOf({ id, limits, controller, ...row }: CarRow): PresetCar {
  const mechanics = Mechanics.parse(row.mechanics);
  return {
    id,
    limits: CarLimits.parse(limits),
    mechanics,
    storedMap: row.compressorMap,
    baseKpa: mechanics.actuatorSpringKpa,
    controller: controller && {
      presetSlots: controller.presetSlots,
      hasTimedOverride: controller.hasTimedOverride,
      isClosedLoop: controller.loop === 'closed',
      dutyPct: SettingRange.parse(controller.dutyPct),
      holdPct: SettingRange.nullable().parse(controller.holdPct),
      correction: SettingRange.nullable().parse(controller.correction),
    },
  };
}

interface RevisionRow extends Omit<PresetValues, 'kind'> {
  readonly kind: string;
}

function valuesOf(presetId: string, row: RevisionRow | undefined): PresetValues {
  if (row === undefined) throw new Error(`preset ${presetId} has no revision`);
  return presetValuesOf(row);
}

/** The settings in a stored revision. */
export function presetValuesOf(row: RevisionRow): PresetValues {
  return {
    name: row.name,
    purpose: row.purpose,
    slot: row.slot,
    kind: PresetKind.parse(row.kind),
    holdSeconds: row.holdSeconds,
    targetKpa: row.targetKpa,
    toleranceKpa: row.toleranceKpa,
    ceilingKpa: row.ceilingKpa,
    dutyPct: row.dutyPct,
    gateHoldPct: row.gateHoldPct,
    correctionStrength: row.correctionStrength,
  };
}

function presetPullOf(row: PresetPull): PresetPull {
  const { number, dutyPct, holdPct, peakKpa, usable, heatSoaked, overrideOn, heldForS, foundSoundAt } = row;
  return { number, dutyPct, holdPct, peakKpa, usable, heatSoaked, overrideOn, heldForS, foundSoundAt };
}
