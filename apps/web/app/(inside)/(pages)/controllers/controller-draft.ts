import { ControllerNew, type Controller, type SettingRange, type Units } from '@pullbook/contracts';
import { readValues, type ReadResult } from '../../../../components/form/read-values';

const rangeText = (name: string, range: SettingRange | null, first: SettingRange | null) => {
  const shown = range ?? first;
  return {
    [`${name}.min`]: shown === null ? '' : String(shown.min),
    [`${name}.max`]: shown === null ? '' : String(shown.max),
    [`${name}.step`]: shown === null ? '' : String(shown.step),
  };
};

const wholeDuty: SettingRange = { min: 0, max: 100, step: 1 };

/** The fields of the form, as text; of a controller on record or of a blank one. */
export function controllerText(controller: Controller | null): Record<string, string> {
  return {
    name: controller?.name ?? '',
    presetSlots: String(controller?.presetSlots ?? 3),
    loop: controller?.loop ?? 'open',
    hasTimedOverride: controller?.hasTimedOverride === true ? 'yes' : 'no',
    canHold: controller !== null && controller.holdPct !== null ? 'yes' : 'no',
    canCorrect: controller !== null && controller.correction !== null ? 'yes' : 'no',
    note: controller?.note ?? '',
    ...rangeText('dutyPct', controller?.dutyPct ?? null, wholeDuty),
    ...rangeText('holdPct', controller?.holdPct ?? null, wholeDuty),
    ...rangeText('correction', controller?.correction ?? null, null),
  };
}

/** The controller as the server wants it, or the faults by field. */
export function readController(
  values: Readonly<Record<string, string>>,
  units: Units,
): ReadResult<ControllerNew> {
  return readValues(values, units, ControllerNew, (from) => {
    const range = (name: string) => ({
      min: from.numberOrNull(`${name}.min`),
      max: from.numberOrNull(`${name}.max`),
      step: from.numberOrNull(`${name}.step`),
    });
    return {
      name: from.text('name'),
      presetSlots: from.numberOrNull('presetSlots'),
      hasTimedOverride: values['hasTimedOverride'] === 'yes',
      loop: values['loop'],
      dutyPct: range('dutyPct'),
      holdPct: values['canHold'] === 'yes' ? range('holdPct') : null,
      correction: values['canCorrect'] === 'yes' ? range('correction') : null,
      note: from.text('note'),
    };
  });
}
