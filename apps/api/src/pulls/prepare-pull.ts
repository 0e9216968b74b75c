import type { SettingRange } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { checkSetting } from '../presets/check-setting.js';
import { loadPreset, type PresetRecord } from '../presets/load-presets.js';
import type { SessionRecord } from '../tuning-sessions/load-session.js';
import { checkSeenGoal } from './check-seen-goal.js';

/** What was set for a pull. */
export interface PullSetting {
  readonly presetId: string;
  /** Revision of the preset that was in sight while driving, where that is known. */
  readonly presetRevision?: number | undefined;
  readonly dutyPct: number;
  readonly holdPct: number | null;
  readonly correctionStrength: number | null;
}

/** A preset that a pull may be recorded for. */
export interface PullableGoal {
  readonly preset: PresetRecord;
  /** Revision that it was driven on. */
  readonly revision: number;
  readonly dutyRange: SettingRange;
  readonly ceilingKpa: number;
}

/**
 * Checks that pulls with these settings may be recorded in a tuning session.
 *
 * @throws DomainError not-found, preset-not-of-this-car, conflict for a replaced preset, goal-changed,
 *   ceiling-missing, readiness-not-passed, duty-out-of-range, hold-out-of-range, invalid-request for a car without a controller
 */
export async function preparePull(
  tx: WorkshopTransaction,
  session: SessionRecord,
  setting: PullSetting,
): Promise<PullableGoal> {
  const preset = await loadPreset(tx, setting.presetId);
  checkPreset(preset, session);
  const revision = await checkSeenGoal(tx, preset, setting.presetRevision);
  const { ceilingKpa } = preset.values;
  if (ceilingKpa === null) {
    throw refusal(
      'ceiling-missing',
      'presetId',
      `agree the ceiling of ${preset.values.name} before the first pull`,
    );
  }
  if (!session.readiness.passed) {
    throw new DomainError(
      'readiness-not-passed',
      `the readiness check of this tuning session is not passed: ${session.readiness.missing.join('; ')}`,
    );
  }
  return { preset, revision, ceilingKpa, dutyRange: checkSettings(preset, setting) };
}

function checkPreset({ car, values, isReplaced }: PresetRecord, session: SessionRecord): void {
  if (car.id !== session.visit.carId) {
    throw refusal('preset-not-of-this-car', 'presetId', `${values.name} is a preset of another car`);
  }
  if (isReplaced) throw refusal('conflict', 'presetId', `a newer preset took the slot of ${values.name}`);
}

function checkSettings(
  { car }: PresetRecord,
  { dutyPct, holdPct, correctionStrength }: PullSetting,
): SettingRange {
  const { controller } = car;
  if (controller === null) {
    throw refusal('invalid-request', 'dutyPct', "describe the car's controller before the first pull");
  }
  checkSetting(
    { code: 'duty-out-of-range', field: 'dutyPct', name: 'duty', value: dutyPct },
    controller.dutyPct,
  );
  checkOptional(controller.holdPct, {
    ...{ code: 'hold-out-of-range', field: 'holdPct', name: 'gate hold' },
    value: holdPct,
  });
  checkOptional(controller.correction, {
    ...{ code: 'invalid-request', field: 'correctionStrength', name: 'correction strength' },
    value: correctionStrength,
  });
  return controller.dutyPct;
}

interface OptionalSetting {
  readonly code: DomainError['code'];
  readonly field: string;
  readonly name: string;
  readonly value: number | null;
}

function checkOptional(range: SettingRange | null, setting: OptionalSetting): void {
  const { value, code, field, name } = setting;
  if (value === null) return;
  if (range === null) throw refusal(code, field, `this car's controller has no ${name}`);
  checkSetting({ ...setting, value }, range);
}

function refusal(code: DomainError['code'], field: string, message: string): DomainError {
  return new DomainError(code, message, { errors: [{ field, message }] });
}
