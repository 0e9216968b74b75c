import { ControllerNew, type Controller, type SettingRange, type Units } from '@pullbook/contracts';
import { readValues, type ReadResult } from '../../../../components/form/read-values';

const wholeDuty: SettingRange = { min: 0, max: 100, step: 1 };
const blank: ControllerNew = {
  name: '',
  presetSlots: 3,
  hasTimedOverride: false,
  loop: 'open',
  dutyPct: wholeDuty,
  holdPct: null,
  correction: null,
  note: '',
};

const yesNo = (isTrue: boolean) => (isTrue ? 'yes' : 'no');

/** The fields of the form, as text; of a controller on record or of a blank one. */
export function controllerText(controller: Controller | null): Record<string, string> {
  const shown = controller ?? blank;
  return {
    name: shown.name,
    presetSlots: String(shown.presetSlots),
    loop: shown.loop,
    hasTimedOverride: yesNo(shown.hasTimedOverride),
    canHold: yesNo(shown.holdPct !== null),
    canCorrect: yesNo(shown.correction !== null),
    note: shown.note,
    ...rangeText('dutyPct', shown.dutyPct),
    ...rangeText('holdPct', shown.holdPct ?? wholeDuty),
    ...rangeText('correction', shown.correction),
  };
}

function rangeText(name: string, range: SettingRange | null): Record<string, string> {
  const parts = ['min', 'max', 'step'] as const;
  return Object.fromEntries(
    parts.map((part) => [`${name}.${part}`, range === null ? '' : String(range[part])]),
  );
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
