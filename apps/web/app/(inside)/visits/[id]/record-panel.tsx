'use client';

import type { Controller, NextPull, Preset, TuningSession } from '@pullbook/contracts';
import { useRef, useState, type FormEvent, type RefObject } from 'react';
import { Button } from '../../../../components/button/button';
import { readValues } from '../../../../components/form/read-values';
import { useDraft } from '../../../../components/form/use-draft';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useUnits } from '../../../../components/units/use-units';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { useNextGateHold } from '../../../../queries/advice/use-next-gate-hold';
import { useRecordPull } from '../../../../queries/pulls/use-record-pull';
import { dutyRangeOf, heldValues } from './held-values';
import { Checks } from './checks';
import { Keypad } from './keypad';
import { PadFigure } from './pad-figure';
import { withMore } from './more-contract';
import { looksForHold } from './looks-for-hold';
import { MoreFigures } from './more-figures';
import { ReadingsRow } from './readings';
import { heldMore, noMore, readMore, type PadField } from '../../../../components/pull/more-values';
import { pullContract } from './pull-contract';
import { Stepper } from './stepper';
import { sayOverStep } from './say-over-step';
import { warningsHere } from './warnings-here';
import styles from './visit.module.css';

interface RecordPanelProps {
  readonly preset: Preset;
  readonly session: TuningSession;
  readonly controller: Controller | null;
  readonly next: NextPull | undefined;
  readonly number: number | null;
  /** Pulls of the preset in this visit, oldest first. */
  readonly pulls: readonly SeenPull[];
  readonly onFiles: (files: readonly File[]) => void;
}

/** Writes down a pull: type the peak, press record. Duty and gear keep their last values until changed. */
export function RecordPanel({ preset, session, controller, next, number, pulls, onFiles }: RecordPanelProps) {
  const units = useUnits();
  const notices = useNotices();
  const record = useRecordPull(session);
  const fileInput = useRef<HTMLInputElement>(null);
  // Empty duty and gear follow advice and last pull; what a person sets stands until the pull is recorded.
  const draft = useDraft({ peakKpa: '', dutyPct: '', gear: '', heatSoaked: '', ...noMore });
  const [pad, setPad] = useState<PadField>('peakKpa');
  const lastPull = pulls.at(-1);
  const hold = useNextGateHold(session.id, preset).data;
  const held = heldValues({ typed: draft.values, next, lastPull, controller });
  const more = heldMore({ typed: draft.values, preset, controller, hold, lastPull });
  const range = dutyRangeOf(controller);
  const isOverride = preset.kind === 'timed-override';
  const needsReadings = isOverride || looksForHold(preset, controller);
  const overStep = sayOverStep(held.dutyPct, next, range.min);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const contract = withMore(pullContract(range), controller);
    const read = readValues({ ...draft.values, ...more, ...held }, units, contract, (from) => ({
      ...readMore(from, preset, draft.values),
      presetId: preset.id,
      dutyPct: from.numberOrNull('dutyPct'),
      gear: from.numberOrNull('gear'),
      peakKpa: from.kpaOrNull('peakKpa'),
      heatSoaked: draft.values.heatSoaked === 'yes',
      note: '',
    }));
    if ('faults' in read) return draft.fail(read.faults);
    const warnings = warningsHere(read.data, { preset, pulls, next, lowestDutyPct: range.min });
    return record.mutate(
      { input: read.data, preset, warnings },
      {
        onSuccess: () => {
          draft.set({ ...noMore, peakKpa: '', dutyPct: '' });
          setPad('peakKpa');
          const what = `${units.peak(read.data.peakKpa)} ${units.pressureWord} at ${read.data.dutyPct} %`;
          notices.done(`Pull ${number ?? ''} written down: ${what}.`);
          for (const warning of warnings) notices.mind(`Pull ${number ?? ''}: ${units.sayReason(warning)}`);
        },
      },
    );
  };
  const peak = (
    <PadFigure
      label={`Recorded peak, ${units.pressureWord}`}
      className={`sheet ${styles.readout}`}
      {...draft.bind('peakKpa')}
      onFocus={() => setPad('peakKpa')}
    />
  );
  return (
    <aside className={styles.right} aria-label="Record a pull">
      <CautionHere cutKpa={session.readiness.overBoostCutKpa} />
      <form onSubmit={submit} noValidate className={styles.record}>
        <div className={styles.figures}>
          {needsReadings ? (
            <ReadingsRow peak={peak} draft={draft} isOverride={isOverride} onPad={setPad} />
          ) : (
            peak
          )}
          <div className={styles.settings}>
            <Stepper
              label="Duty driven, %"
              value={held.dutyPct}
              follows={draft.values.dutyPct === ''}
              step={range.step}
              min={range.min}
              max={range.max}
              error={draft.faults['dutyPct']}
              onChange={(dutyPct) => draft.set({ dutyPct })}
            />
            <Stepper
              label="Gear"
              value={held.gear}
              follows={draft.values.gear === ''}
              step={1}
              min={1}
              max={12}
              error={draft.faults['gear']}
              onChange={(gear) => draft.set({ gear })}
            />
          </div>
          <MoreFigures
            draft={draft}
            held={more}
            isOverride={isOverride}
            controller={controller}
            hasReadings={needsReadings}
            onPad={setPad}
          />
          <OverStep text={overStep} />
          <ProblemNote error={record.error} />
        </div>
        <div className={styles.keys}>
          <Keypad value={draft.values[pad]} onChange={(text) => draft.set({ [pad]: text })} />
          <Checks draft={draft} isOverride={isOverride} />
          <div className={styles.actions}>
            <Button onClick={() => fileInput.current?.click()}>Drop a log</Button>
            <Button type="submit" kind="act" big busy={record.isPending}>
              {`Record pull ${number ?? ''}`.trim()}
            </Button>
          </div>
        </div>
        <LogInput inputRef={fileInput} onFiles={onFiles} />
      </form>
    </aside>
  );
}

function CautionHere({ cutKpa }: Readonly<{ cutKpa: number | null }>) {
  const units = useUnits();
  return (
    <Mind>
      <p className="small">
        Driver drives, passenger types. Stop at any knock, lean reading or odd noise.
        {cutKpa === null ? '' : ` Over-boost cut is set to ${units.write(cutKpa)}.`}
      </p>
    </Mind>
  );
}

function OverStep({ text }: Readonly<{ text: string | null }>) {
  if (text === null) return null;
  return (
    <Mind>
      <p className="small">{text}</p>
    </Mind>
  );
}

interface LogInputProps {
  readonly inputRef: RefObject<HTMLInputElement | null>;
  readonly onFiles: (files: readonly File[]) => void;
}

function LogInput({ inputRef, onFiles }: LogInputProps) {
  return (
    <input
      ref={inputRef}
      type="file"
      multiple
      className="unseen"
      tabIndex={-1}
      aria-label="Log file"
      accept=".csv,.txt,.log,text/csv,text/plain"
      onChange={(event) => {
        onFiles([...(event.target.files ?? [])]);
        event.target.value = '';
      }}
    />
  );
}
