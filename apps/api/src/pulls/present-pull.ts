import { Reason, type Pull } from '@pullbook/contracts';
import { z } from 'zod';

type Told = 'source' | 'reasons' | 'warnings' | 'voidedAt' | 'foundSoundAt' | 'recordedAt' | 'hunting';

/** A row of the book as the database gives it. */
export interface PullRow extends Omit<Pull, Told> {
  readonly source: string;
  readonly reasons: unknown;
  readonly warnings: unknown;
  readonly voidedAt: Date | null;
  readonly foundSoundAt: Date | null;
  readonly recordedAt: Date;
  readonly huntingHz: number | null;
  readonly huntingDampingRatio: number | null;
  readonly huntingAmplitudeKpa: number | null;
}

const Reasons = z.array(Reason);

/** A pull as the API tells it. */
export function presentPull(row: PullRow): Pull {
  return {
    id: row.id,
    tuningSessionId: row.tuningSessionId,
    presetId: row.presetId,
    presetRevision: row.presetRevision,
    number: row.number,
    dutyPct: row.dutyPct,
    holdPct: row.holdPct,
    gear: row.gear,
    peakKpa: row.peakKpa,
    rawPeakKpa: row.rawPeakKpa,
    settledKpa: row.settledKpa,
    overshootPct: row.overshootPct,
    riseTimeS: row.riseTimeS,
    onsetRpm: row.onsetRpm,
    intakeC: row.intakeC,
    gradientPct: row.gradientPct,
    heatSoaked: row.heatSoaked,
    correctionStrength: row.correctionStrength,
    hunting: huntingOf(row),
    overrideOn: row.overrideOn,
    heldForS: row.heldForS,
    source: row.source === 'log' ? 'log' : 'typed',
    logId: row.logId,
    usable: row.usable,
    reasons: Reasons.parse(row.reasons),
    warnings: Reasons.parse(row.warnings),
    voidedAt: row.voidedAt?.toISOString() ?? null,
    voidReason: row.voidReason,
    foundSoundAt: row.foundSoundAt?.toISOString() ?? null,
    foundSoundNote: row.foundSoundNote,
    foundSoundBy: row.foundSoundBy,
    note: row.note,
    recordedBy: row.recordedBy,
    recordedAt: row.recordedAt.toISOString(),
  };
}

/** The hunting that a log showed in a pull; null where none was found. */
export function huntingOf(
  row: Pick<PullRow, 'huntingHz' | 'huntingDampingRatio' | 'huntingAmplitudeKpa'>,
): Pull['hunting'] {
  const { huntingHz, huntingDampingRatio, huntingAmplitudeKpa } = row;
  if (huntingHz === null || huntingAmplitudeKpa === null) return null;
  return { frequencyHz: huntingHz, dampingRatio: huntingDampingRatio, amplitudeKpa: huntingAmplitudeKpa };
}
