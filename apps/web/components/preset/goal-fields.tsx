import type { Car } from '@pullbook/contracts';
import { TextField } from '../field/text-field';
import type { Draft } from '../form/use-draft';
import { useUnits } from '../units/use-units';
import { useCeilingHint } from './use-ceiling-hint';

type GoalName = 'targetKpa' | 'toleranceKpa' | 'ceilingKpa';

interface GoalFieldsProps {
  readonly car: Car;
  readonly draft: Pick<Draft<Readonly<Record<GoalName, string>>>, 'bind'>;
}

/** Target, tolerance and ceiling of a preset, with how high a ceiling of this car may stand. */
export function GoalFields({ car, draft }: GoalFieldsProps) {
  const units = useUnits();
  const ceilingHint = useCeilingHint(car, units);
  const pressure = { unit: units.pressureWord, inputMode: 'decimal' } as const;
  return (
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
  );
}
