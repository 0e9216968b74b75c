'use client';

import { cautionsBeforePulling, ReadinessAnswer, type Car, type TuningSession } from '@pullbook/contracts';
import { DEFAULT_CEILING_MARGINS } from '@pullbook/tuning-math';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { CheckField } from '../../../../components/field/check-field';
import { TextField } from '../../../../components/field/text-field';
import { readValues } from '../../../../components/form/read-values';
import { useDraft } from '../../../../components/form/use-draft';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { useAnswerReadiness } from '../../../../queries/tuning-sessions/use-tuning-sessions';
import { idleVacuumHint } from './idle-vacuum-hint';
import styles from './visit.module.css';

interface ReadinessFormProps {
  readonly session: TuningSession;
  readonly car: Car;
}

/** What must be true of car and place before the first pull. No advice is given until all of it is. */
export function ReadinessForm({ session, car }: ReadinessFormProps) {
  const units = useUnits();
  const { readiness } = session;
  const [ticked, setTicked] = useState<ReadonlySet<string>>(
    () => new Set(readiness.items.filter((item) => item.ok).map((item) => item.key)),
  );
  const draft = useDraft({
    overBoostCutKpa: units.toField(readiness.overBoostCutKpa ?? car.limits.overBoostCutKpa),
    idleVacuumKpa: units.toField(readiness.idleVacuumKpa),
  });
  const answer = useAnswerReadiness(session);
  const tick = (key: string, isTrue: boolean) =>
    setTicked((old) => new Set(isTrue ? [...old, key] : [...old].filter((one) => one !== key)));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, ReadinessAnswer, (from) => ({
      items: readiness.items.map((item) => ({ key: item.key, ok: ticked.has(item.key), note: item.note })),
      overBoostCutKpa: from.kpaOrNull('overBoostCutKpa'),
      idleVacuumKpa: from.kpaOrNull('idleVacuumKpa'),
    }));
    if ('faults' in read) draft.fail(read.faults);
    else answer.mutate(read.data, { onError: draft.failFrom });
  };
  const open = readiness.items.length - ticked.size;
  return (
    <main id="content" className={styles.page}>
      <form onSubmit={submit} noValidate className={styles.form}>
        <h2 className={styles.formTitle}>Readiness check</h2>
        <p className="soft">
          Tick only what you have seen. Until all of it is true there is no advice, and no pull.
        </p>
        <ul className={`sheet ${styles.ready}`}>
          {readiness.items.map((item) => (
            <li key={item.key}>
              <CheckField
                label={item.question}
                checked={ticked.has(item.key)}
                onChange={(isTrue) => tick(item.key, isTrue)}
              />
            </li>
          ))}
        </ul>
        <div className="sheet columns">
          <TextField
            label={`Over-boost cut set to, ${units.pressureWord}`}
            unit={units.pressureWord}
            inputMode="decimal"
            hint={`The pressure at which the engine is cut off by itself: at least ${units.write(DEFAULT_CEILING_MARGINS.overBoostCutKpa)} above every ceiling, so that scatter does not set it off, and not above the car’s lowest limit.`}
            {...draft.bind('overBoostCutKpa')}
          />
          <TextField
            label={`Idle vacuum, ${units.pressureWord} gauge`}
            unit={units.pressureWord}
            inputMode="text"
            hint={`If measured; below zero, such as ${units.figure(-65)}. ${idleVacuumHint(session.air.pressureAbsKpa, draft.values.idleVacuumKpa, units)}`}
            {...draft.bind('idleVacuumKpa')}
          />
        </div>
        <Mind>
          <ul>
            {cautionsBeforePulling.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Mind>
        {readiness.missing.length > 0 && readiness.checkedAt !== null ? (
          <Mind title="Still open">
            <ul>
              {readiness.missing.map((one) => (
                <li key={one}>{units.say(one)}</li>
              ))}
            </ul>
          </Mind>
        ) : null}
        <ProblemNote error={answer.error} />
        <div className="row">
          <p className="soft" role="status">
            {open === 0 ? 'Everything is ticked.' : `${open} of ${readiness.items.length} still open.`}
          </p>
          <span className="grow" />
          <Button type="submit" kind="act" big busy={answer.isPending}>
            Save readiness check
          </Button>
        </div>
      </form>
    </main>
  );
}
