import type { SettingRange } from '@pullbook/contracts';
import { sayLimit, type BuiltCeiling } from '../engine/ceiling-of-car.js';
import { DomainError } from '../plumbing/domain-error.js';
import { checkSetting } from './check-setting.js';
import type { PresetValues } from './preset-values.js';

/** What the car's controller can hold and do; null where no controller has been described. */
export interface ControllerAbilities {
  readonly presetSlots: number;
  readonly hasTimedOverride: boolean;
  readonly dutyPct: SettingRange;
  readonly holdPct: SettingRange | null;
  readonly correction: SettingRange | null;
}

/**
 * Refuses settings that the car or its controller could not stand: ceiling not above target or above what the
 * car's limits allow, a slot that the controller does not have, a setting outside its range or between its steps, a timed
 * override that the controller does not know or that has no seconds.
 *
 * @throws DomainError naming the field and what would have been right
 */
export function checkPresetValues(
  values: PresetValues,
  controller: ControllerAbilities | null,
  allowed: BuiltCeiling | null,
): void {
  checkGoal(values, allowed);
  checkKind(values, controller);
  checkSlot(values, controller);
  checkSettings(values, controller);
}

function refuse(field: string, message: string): never {
  throw new DomainError('invalid-request', message, { errors: [{ field, message }] });
}

function checkGoal(
  { targetKpa, toleranceKpa, ceilingKpa }: PresetValues,
  allowed: BuiltCeiling | null,
): void {
  if (targetKpa !== null && toleranceKpa >= targetKpa) {
    refuse(
      'toleranceKpa',
      `the tolerance (${toleranceKpa} kPa) must be smaller than the target (${targetKpa} kPa)`,
    );
  }
  if (ceilingKpa === null) return;
  if (targetKpa !== null && ceilingKpa <= targetKpa) {
    const message = `the ceiling (${ceilingKpa} kPa) must stand above the target (${targetKpa} kPa)`;
    throw new DomainError('ceiling-not-above-target', message, {
      errors: [{ field: 'ceilingKpa', message }],
    });
  }
  if (allowed === null || ceilingKpa <= allowed.ceilingKpa) return;
  const message = `the ceiling (${ceilingKpa} kPa) stands above the car's lowest known limit: its ${sayLimit(allowed.binds)}`;
  throw new DomainError('ceiling-above-car-limit', message, { errors: [{ field: 'ceilingKpa', message }] });
}

function checkKind({ kind, holdSeconds }: PresetValues, controller: ControllerAbilities | null): void {
  if (kind === 'standing') {
    if (holdSeconds !== null) refuse('holdSeconds', 'only a timed override has seconds');
    return;
  }
  if (controller !== null && !controller.hasTimedOverride) {
    refuse('kind', "this car's controller has no timed override");
  }
  if (holdSeconds === null) refuse('holdSeconds', 'a timed override needs its seconds');
}

/** A timed override may stand in a slot of its own, behind the standing ones. */
function checkSlot({ slot, kind }: PresetValues, controller: ControllerAbilities | null): void {
  if (controller === null) return;
  const last = controller.presetSlots + (kind === 'timed-override' ? 1 : 0);
  if (slot > last) refuse('slot', `slot ${slot} does not exist: this controller has slots 1 to ${last}`);
}

function checkSettings(values: PresetValues, controller: ControllerAbilities | null): void {
  const { dutyPct, gateHoldPct, correctionStrength } = values;
  const settings = [
    { code: 'duty-out-of-range', field: 'dutyPct', name: 'duty', value: dutyPct, key: 'dutyPct' },
    {
      code: 'hold-out-of-range',
      field: 'gateHoldPct',
      name: 'gate hold',
      value: gateHoldPct,
      key: 'holdPct',
    },
    {
      code: 'invalid-request',
      field: 'correctionStrength',
      name: 'correction strength',
      value: correctionStrength,
      key: 'correction',
    },
  ] as const;
  for (const { key, value, ...setting } of settings) {
    if (value === null) continue;
    if (controller === null) {
      refuse(setting.field, `the car has no controller yet: choose it first, then store its ${setting.name}`);
    }
    const range = controller[key];
    if (range === null) refuse(setting.field, `this car's controller has no ${setting.name}`);
    checkSetting({ ...setting, value }, range);
  }
}
