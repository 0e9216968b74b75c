'use client';

import type { LogSettings } from '@pullbook/contracts';
import { PULL_SETTING_FACTS, type PullSettingGroup } from '@pullbook/tuning-math';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useChangeLogSettings, useLogSettings } from '../../../../queries/log-settings/use-log-settings';
import { faultsOf, hintOf, labelOf, names, settingsOf, textOf, type Typed } from './thresholds-draft';
import styles from './workshop.module.css';

const groups: ReadonlyArray<readonly [PullSettingGroup, string]> = [
  ['finding', 'Finding pulls'],
  ['filter', 'Filter'],
  ['figures', 'Definitions of the figures'],
  ['verdict', 'Verdict'],
];

/** What does the analysis of a log hold to? */
export function ThresholdsPart({ mayChange }: Readonly<{ mayChange: boolean }>) {
  const settings = useLogSettings();
  return (
    <section className="sheet stack" aria-labelledby="thresholds">
      <h2 id="thresholds">Thresholds of the log analysis</h2>
      <p className="soft">
        They hold for logs that come in from now on. Each result keeps the thresholds that made it, and stays;
        a log can be computed anew by these.
      </p>
      <ProblemNote error={settings.error} onRetry={() => void settings.refetch()} />
      {settings.isPending ? <Skeleton lines={6} label="Loading the thresholds" /> : null}
      {settings.data === undefined ? null : (
        <details>
          <summary className={styles.unfold}>{summaryOf(settings.data)}</summary>
          <ThresholdsForm key={settings.data.revision} known={settings.data} mayChange={mayChange} />
        </details>
      )}
    </section>
  );
}

function summaryOf({ settings, defaults }: LogSettings): string {
  const count = [...names, 'trustedGears' as const].filter(
    (name) => JSON.stringify(settings[name]) !== JSON.stringify(defaults[name]),
  ).length;
  return count === 0 ? 'All as they come. Show them' : `${count} changed. Show them`;
}

interface FormProps {
  readonly known: LogSettings;
  readonly mayChange: boolean;
}

function ThresholdsForm({ known, mayChange }: FormProps) {
  const change = useChangeLogSettings();
  const notices = useNotices();
  const [typed, setTyped] = useState(() => textOf(known.settings));
  const faults = faultsOf(typed);
  const save = (texts: Typed) =>
    change.mutate(
      { revision: known.revision, changes: settingsOf(texts) },
      { onSuccess: () => notices.done('Thresholds saved.') },
    );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (Object.keys(faults).length === 0) save(typed);
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      {groups.map(([group, title]) => (
        <fieldset key={group} className={styles.thresholds} disabled={!mayChange}>
          <legend>{title}</legend>
          {names
            .filter((name) => PULL_SETTING_FACTS[name].group === group)
            .map((name) => (
              <TextField
                key={name}
                label={labelOf(PULL_SETTING_FACTS[name])}
                unit={PULL_SETTING_FACTS[name].unit}
                inputMode="decimal"
                hint={hintOf(PULL_SETTING_FACTS[name], known.defaults[name])}
                value={typed[name]}
                error={faults[name]}
                onChange={(text) => setTyped({ ...typed, [name]: text })}
              />
            ))}
          {group === 'verdict' ? (
            <TextField
              label="Gears that load the engine"
              hint={`A pull in another gear is not usable. As it comes: ${known.defaults.trustedGears.join(', ')}.`}
              value={typed.trustedGears}
              error={faults.trustedGears}
              onChange={(text) => setTyped({ ...typed, trustedGears: text })}
            />
          ) : null}
        </fieldset>
      ))}
      <ProblemNote error={change.error} />
      {mayChange ? (
        <p className="row">
          <Button type="submit" busy={change.isPending} disabled={Object.keys(faults).length > 0}>
            Save thresholds
          </Button>
          <Button
            kind="quiet"
            busy={change.isPending}
            onClick={() => {
              setTyped(textOf(known.defaults));
              save(textOf(known.defaults));
            }}
          >
            Back to how they come
          </Button>
        </p>
      ) : null}
    </form>
  );
}
