'use client';

import { VisitChange, type Visit } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { useTeam } from '../../queries/people/use-team';
import { useChangeVisit } from '../../queries/visits/use-change-visit';
import { Button } from '../button/button';
import { ChoiceField } from '../field/choice-field';
import { TextField } from '../field/text-field';
import { readValues } from '../form/read-values';
import { useDraft } from '../form/use-draft';
import { ProblemNote } from '../marks/problem-note';
import { useNotices } from '../notices/notices';
import { toLocalInput } from '../time/say-when';
import { useUnits } from '../units/use-units';
import { StageTrail } from './stage-trail';

/** Wishes, bay, tuner and times: what the desk and the tuner keep up to date. */
export function VisitFacts({ visit }: Readonly<{ visit: Visit }>) {
  const units = useUnits();
  const notices = useNotices();
  const change = useChangeVisit();
  const tuners = (useTeam().data ?? []).filter((one) => one.active && one.role !== 'desk');
  const draft = useDraft({
    wishes: visit.wishes,
    bay: visit.bay ?? '',
    tunerId: visit.tunerId ?? '',
    bookedFor: toLocalInput(visit.bookedFor),
    promisedAt: toLocalInput(visit.promisedAt),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, VisitChange, (from) => ({
      wishes: from.text('wishes'),
      bay: from.textOrNull('bay'),
      tunerId: from.textOrNull('tunerId'),
      bookedFor: from.instantOrNull('bookedFor'),
      promisedAt: from.instantOrNull('promisedAt'),
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return change.mutate(
      { id: visit.id, revision: visit.revision, change: read.data },
      { onSuccess: () => notices.done('Visit saved.'), onError: draft.failFrom },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="sheet stack" aria-labelledby="facts">
      <h2 id="facts">About this visit</h2>
      <TextField label="Wishes" lines={3} {...draft.bind('wishes')} />
      <div className="columns">
        <ChoiceField
          label="Tuner"
          choices={[
            { value: '', label: 'not yet known' },
            ...tuners.map((one) => ({ value: one.id, label: one.name })),
          ]}
          {...draft.bind('tunerId')}
        />
        <TextField label="Bay" {...draft.bind('bay')} />
        <TextField label="Booked for" type="datetime-local" {...draft.bind('bookedFor')} />
        <TextField label="Promised for" type="datetime-local" {...draft.bind('promisedAt')} />
      </div>
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" busy={change.isPending}>
          Save visit
        </Button>
      </p>
      <h3>Where it has been</h3>
      <StageTrail visit={visit} />
    </form>
  );
}
