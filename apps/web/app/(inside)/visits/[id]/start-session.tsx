'use client';

import { cautionsBeforePulling, TuningSessionNew, type Visit } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { ChoiceField } from '../../../../components/field/choice-field';
import { TextField } from '../../../../components/field/text-field';
import { readValues } from '../../../../components/form/read-values';
import { useDraft } from '../../../../components/form/use-draft';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { useStartTuningSession } from '../../../../queries/tuning-sessions/use-tuning-sessions';
import styles from './visit.module.css';

interface StartSessionProps {
  readonly visit: Visit;
  readonly onStarted?: () => void;
}

/** Where, with whom and in what air: the first thing of a stretch of pulls. */
export function StartSession({ visit, onStarted }: StartSessionProps) {
  const me = useSignedInMe();
  const units = useUnits();
  const start = useStartTuningSession(visit.id);
  const draft = useDraft({
    placeKind: 'dyno-cell',
    place: '',
    driver: '',
    passenger: me.member.name,
    fuel: '',
    'air.temperatureC': '',
    'air.pressureAbsKpa': '',
    'air.humidityPct': '',
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, TuningSessionNew, (from) => ({
      placeKind: from.text('placeKind'),
      place: from.text('place'),
      driver: from.text('driver'),
      passenger: from.text('passenger'),
      fuel: from.text('fuel'),
      air: {
        temperatureC: from.celsiusOrNull('air.temperatureC'),
        pressureAbsKpa: from.numberOrNull('air.pressureAbsKpa'),
        humidityPct: from.numberOrNull('air.humidityPct'),
      },
    }));
    if ('faults' in read) draft.fail(read.faults);
    else start.mutate(read.data, { onError: draft.failFrom, ...(onStarted ? { onSuccess: onStarted } : {}) });
  };
  return (
    <main id="content" className={styles.page}>
      <form onSubmit={submit} noValidate className={styles.form}>
        <h2 className={styles.formTitle}>Start a tuning session</h2>
        <Mind>
          <ul>
            {cautionsBeforePulling.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Mind>
        <section className="sheet stack" aria-labelledby="where">
          <h3 id="where">Where and who</h3>
          <div className="columns">
            <ChoiceField
              label="Kind of place"
              choices={[
                { value: 'dyno-cell', label: 'dyno cell' },
                { value: 'closed-course', label: 'closed course' },
              ]}
              {...draft.bind('placeKind')}
            />
            <TextField label="Place" required hint="Which cell, which course." {...draft.bind('place')} />
            <TextField label="Driver" required {...draft.bind('driver')} />
            <TextField label="Passenger with the tablet" required {...draft.bind('passenger')} />
            <TextField label="Fuel in the tank" {...draft.bind('fuel')} />
          </div>
        </section>
        <section className="sheet stack" aria-labelledby="air">
          <h3 id="air">Air of the day, as far as measured</h3>
          <div className="columns">
            <TextField
              label={`Air temperature, ${units.temperatureWord}`}
              unit={units.temperatureWord}
              inputMode="decimal"
              {...draft.bind('air.temperatureC')}
            />
            <TextField
              label="Barometric pressure, kPa absolute"
              unit="kPa"
              inputMode="decimal"
              {...draft.bind('air.pressureAbsKpa')}
            />
            <TextField label="Humidity, %" unit="%" inputMode="decimal" {...draft.bind('air.humidityPct')} />
          </div>
        </section>
        <ProblemNote error={start.error} />
        <Button type="submit" kind="act" big busy={start.isPending}>
          Start tuning session
        </Button>
      </form>
    </main>
  );
}
