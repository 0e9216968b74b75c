import type { Car } from '@pullbook/contracts';
import { ArgumentError, parsePressure, type PressureUnit } from '@pullbook/tuning-math';
import { usePresets } from '../../queries/presets/use-presets';
import { TextField } from '../field/text-field';
import type { Draft } from '../form/use-draft';
import { useUnits } from '../units/use-units';
import { sayNearTarget } from './near-target';
import { useCeilingHint } from './use-ceiling-hint';

type GoalName = 'targetKpa' | 'toleranceKpa' | 'ceilingKpa';

interface GoalFieldsProps {
  readonly car: Car;
  /** Slot of the preset whose goal it is. */
  readonly slot: number;
  readonly draft: Pick<Draft<Readonly<Record<GoalName, string>>>, 'bind' | 'values'>;
}

/** Target, tolerance and ceiling of a preset, with how high a ceiling of this car may stand and which preset it is near. */
export function GoalFields({ car, slot, draft }: GoalFieldsProps) {
  const units = useUnits();
  const ceilingHint = useCeilingHint(car, units);
  const typed = (name: GoalName) => kpaOf(draft.values[name], units.pressure);
  const goal = { slot, targetKpa: typed('targetKpa'), toleranceKpa: typed('toleranceKpa') };
  const near = sayNearTarget(goal, usePresets(car.id).data ?? [], units);
  const pressure = { unit: units.pressureWord, inputMode: 'decimal' } as const;
  return (
    // A gap only where there is a hint: the status stands ready, empty, to be read out.
    <div className={near === '' ? undefined : 'stack'}>
      <div className="columns">
        <TextField label={`Target, ${pressure.unit}`} {...pressure} {...draft.bind('targetKpa')} />
        <TextField label={`Tolerance, ± ${pressure.unit}`} {...pressure} {...draft.bind('toleranceKpa')} />
        <TextField
          label={`Ceiling, ${pressure.unit}`}
          hint={`No pull may pass it. ${ceilingHint}`}
          {...pressure}
          {...draft.bind('ceilingKpa')}
        />
      </div>
      <div role="status">{near === '' ? null : <p className="small">{near}</p>}</div>
    </div>
  );
}

/** What is typed so far, kPa; null where that is no pressure: the field itself says so when it is sent. */
function kpaOf(text: string, unit: PressureUnit): number | null {
  if (text.trim() === '') return null;
  try {
    return parsePressure(text, unit);
  } catch (error) {
    if (error instanceof ArgumentError) return null;
    throw error;
  }
}
