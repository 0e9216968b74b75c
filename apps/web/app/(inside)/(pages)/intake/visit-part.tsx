'use client';

import { ChoiceField } from '../../../../components/field/choice-field';
import { TextField } from '../../../../components/field/text-field';
import type { Draft } from '../../../../components/form/use-draft';
import { useTeam } from '../../../../queries/people/use-team';
import type { IntakeValues } from './intake-draft';

/** When the car comes, where it stands, who works on it, and when it is promised. */
export function VisitPart({ draft }: Readonly<{ draft: Draft<IntakeValues> }>) {
  const team = useTeam();
  const tuners = (team.data ?? []).filter((one) => one.active && one.role !== 'desk');
  return (
    <section className="sheet stack" aria-labelledby="time">
      <h2 id="time">Time and place</h2>
      <div className="columns">
        <ChoiceField
          label="The car is"
          choices={[
            { value: 'arrived', label: 'here now' },
            { value: 'booked', label: 'booked for later' },
          ]}
          {...draft.bind('visit.stage')}
        />
        <TextField label="Booked for" type="datetime-local" {...draft.bind('visit.bookedFor')} />
        <TextField label="Promised for" type="datetime-local" {...draft.bind('visit.promisedAt')} />
        <TextField label="Bay" {...draft.bind('visit.bay')} />
        <ChoiceField
          label="Tuner"
          choices={[
            { value: '', label: 'not yet known' },
            ...tuners.map((one) => ({ value: one.id, label: one.name })),
          ]}
          {...draft.bind('visit.tunerId')}
        />
      </div>
    </section>
  );
}
