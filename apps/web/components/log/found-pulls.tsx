'use client';

import { LogConfirm, type Log, type Preset } from '@pullbook/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../button/button';
import { CheckField } from '../field/check-field';
import { TextField } from '../field/text-field';
import { readValues } from '../form/read-values';
import { useDraft } from '../form/use-draft';
import { Empty, Mind } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';
import { useNotices } from '../notices/notices';
import { useUnits } from '../units/use-units';
import { useConfirmLog } from '../../queries/logs/use-confirm-log';
import { countPulls } from './count-pulls';
import { LogSettings, noLogSettings } from './log-settings';
import { FoundPullRow } from './found-pull-row';
import styles from './log.module.css';

interface FoundPullsProps {
  readonly visitId: string;
  readonly log: Log;
  readonly preset: Preset;
  readonly dutyPct: number | null;
  readonly onDone: () => void;
}

/** The pulls found in a log: choose which to take in, say once which duty was set. */
export function FoundPulls({ visitId, log, preset, dutyPct, onDone }: FoundPullsProps) {
  const units = useUnits();
  const notices = useNotices();
  const confirm = useConfirmLog(visitId);
  const { analysis } = log;
  const taken = new Set(log.confirmed.map((one) => one.index));
  const [chosen, setChosen] = useState<ReadonlySet<number>>(
    () => new Set(analysis.pulls.flatMap((pull, index) => (pull.usable && !taken.has(index) ? [index] : []))),
  );
  const [isHot, setHot] = useState(false);
  const draft = useDraft({ ...noLogSettings, dutyPct: dutyPct === null ? '' : String(dutyPct) });
  const choose = (index: number, isChosen: boolean) =>
    setChosen((old) => new Set(isChosen ? [...old, index] : [...old].filter((one) => one !== index)));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, LogConfirm, (from) => ({
      presetId: preset.id,
      presetRevision: preset.revision,
      dutyPct: from.numberOrNull('dutyPct'),
      holdPct: from.numberOrNull('holdPct'),
      correctionStrength: from.numberOrNull('correctionStrength'),
      overrideOn: preset.kind === 'timed-override' ? true : null,
      heatSoaked: isHot,
      indexes: [...chosen].sort((a, b) => a - b),
      version: log.version,
    }));
    if ('faults' in read) return draft.fail(read.faults);
    return confirm.mutate(
      { log, input: read.data },
      {
        onSuccess: () => {
          notices.done(`${countPulls(read.data.indexes.length)} taken in from ${log.fileName}.`);
          onDone();
        },
      },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      {log.alreadyOnRecord ? (
        <Mind>This very file is on record already; nothing was stored twice.</Mind>
      ) : null}
      {analysis.warnings.length === 0 ? null : (
        <Mind title="About this log">
          <ul>
            {analysis.warnings.map((warning) => (
              <li key={`${warning.code}${warning.text}`}>{units.sayReason(warning)}</li>
            ))}
          </ul>
        </Mind>
      )}
      {analysis.pulls.length === 0 ? (
        <Empty title="No full-load pull was found in this log.">
          <p>The file is kept. Check that throttle and boost were logged, or type the peak by hand.</p>
        </Empty>
      ) : (
        <ul className={styles.found}>
          {analysis.pulls.map((pull, index) => (
            <FoundPullRow
              key={index}
              index={index}
              pull={pull}
              trace={log.traces[index]}
              isTaken={taken.has(index)}
              isChosen={chosen.has(index)}
              onChoose={(isChosen) => choose(index, isChosen)}
            />
          ))}
        </ul>
      )}
      <p>
        <a className={styles.traces} href={`/logs/${log.id}`} target="_blank" rel="noreferrer">
          Look at the traces of this log
        </a>
      </p>
      {analysis.pulls.length === 0 ? null : (
        <>
          <div className={styles.once}>
            <TextField
              label="Duty that was set, %"
              unit="%"
              inputMode="decimal"
              hint={`For all the pulls chosen, on preset ${preset.slot} ${preset.name}.`}
              {...draft.bind('dutyPct')}
            />
            <LogSettings log={log} preset={preset} draft={draft} />
            <CheckField label="Heat-soaked" checked={isHot} onChange={setHot} />
          </div>
          <ProblemNote error={confirm.error} />
          <Button type="submit" kind="act" big busy={confirm.isPending} disabled={chosen.size === 0}>
            {chosen.size === 0 ? 'Choose a pull to take in' : `Take in ${countPulls(chosen.size)}`}
          </Button>
        </>
      )}
    </form>
  );
}
