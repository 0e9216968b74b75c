'use client';

import type { Car, Controller, DutyAdvice, Preset, Pull, TuningSession, Visit } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState, type DragEvent } from 'react';
import { useControllers } from '../../../../queries/controllers/use-controllers';
import { useCurrentAdvice } from '../../../../queries/advice/use-current-advice';
import { usePulls } from '../../../../queries/pulls/use-pulls';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { ProofLines } from '../../../../components/preset/proof-lines';
import { PeakStrip } from '../../../../components/pictures/peak-strip';
import { LateLogs } from './late-logs';
import { looksForHold } from './looks-for-hold';
import { NotInProof } from './not-in-proof';
import { NextPullPanel } from './next-pull-panel';
import { PullList } from './pull-list';
import { RecordPanel } from './record-panel';
import { ResponsePart } from './response-part';
import { stripOf } from './strip-of';
import styles from './visit.module.css';

const CorrectionPart = dynamic(() => import('./correction-part').then((part) => part.CorrectionPart));
const HoldPart = dynamic(() => import('./hold-part').then((part) => part.HoldPart));
const HoldWaits = dynamic(() => import('./hold-part').then((part) => part.HoldWaits));
const LogDrop = dynamic(() => import('./log-drop').then((part) => part.LogDrop));

interface PresetBenchProps {
  readonly preset: Preset;
  readonly visit: Visit;
  readonly session: TuningSession;
  readonly sessions: readonly TuningSession[];
  readonly car: Car;
}

/** One preset on test: what to drive next, what was driven, and the place to write it down. */
export function PresetBench({ preset, visit, session, sessions, car }: PresetBenchProps) {
  const { pulls, isPending, error } = usePulls(
    sessions.map((one) => one.id),
    preset.id,
  );
  const current = useCurrentAdvice(session.id, preset, pulls);
  const controllers = useControllers();
  const [files, setFiles] = useState<readonly File[]>([]);
  const [file] = files;
  const [isOver, setOver] = useState(false);
  const controller = controllers.data?.find((one) => one.id === car.controllerId) ?? null;
  // Not before the pulls are read: a wrong number on the button would end up on paper.
  const number = isPending ? null : numberAfter(pulls);
  const advice = current.next?.advice ?? null;
  const over = (event: DragEvent) => {
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    setFiles([...event.dataTransfer.files]);
  };
  return (
    <div
      className={`${styles.halves} ${isOver ? styles.dropHere : ''}`}
      onDragOver={over}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <div className={styles.left}>
        {looksForHold(preset, controller) ? (
          <HoldPart preset={preset} visit={visit} session={session} pulls={pulls} number={number} />
        ) : null}
        <NextPullPanel
          preset={preset}
          car={car}
          visit={visit}
          number={number}
          pulls={pulls}
          next={current.next}
          error={current.error}
          onRetry={current.refetch}
        />
        <AfterDuty preset={preset} session={session} controller={controller} />
        <LateLogs visitId={visit.id} preset={preset} dutyPct={dutyForLog(advice, pulls)} openFile={file} />
        <section className={`sheet ${styles.stripSheet}`} aria-label="Peak strip">
          <ProofLines preset={preset} advice={advice} />
          <NotInProof pulls={pulls} />
          <PeakStrip form="medium" figures={stripOf({ preset, car, pulls, advice })} />
        </section>
        <section className={`sheet ${styles.listSheet}`} aria-labelledby="pulls">
          <ProblemNote error={error} />
          <PullList visitId={visit.id} pulls={pulls} isPending={isPending} />
          <ResponsePart preset={preset} car={car} controller={controller} pulls={pulls} advice={advice} />
        </section>
      </div>
      <RecordPanel
        preset={preset}
        session={session}
        controller={controller}
        next={current.next}
        number={number}
        pulls={pulls}
        onFiles={setFiles}
      />
      {file === undefined ? null : (
        <LogDrop
          key={`${file.name}${file.size}${file.lastModified}`}
          file={file}
          moreCount={files.length - 1}
          session={session}
          preset={preset}
          dutyPct={dutyForLog(advice, pulls)}
          onClose={() => setFiles(files.slice(1))}
        />
      )}
    </div>
  );
}

interface AfterDutyProps extends Pick<PresetBenchProps, 'preset' | 'session'> {
  readonly controller: Controller | null;
}

/** What the controller lets be found once the duty is kept. */
function AfterDuty({ preset, session, controller }: AfterDutyProps) {
  return (
    <>
      {looksForHold(preset, controller) ? <HoldWaits preset={preset} session={session} /> : null}
      {mayCorrect(preset, controller) ? <CorrectionPart preset={preset} session={session} /> : null}
    </>
  );
}

// Its script comes only where the controller has such a setting, and once the duty is kept: not before is there an answer.
const mayCorrect = ({ dutyPct }: Preset, controller: Controller | null) =>
  dutyPct !== null && controller?.loop === 'closed' && controller.correction !== null;

const numberAfter = (pulls: readonly Pull[]) => (pulls.at(-1)?.number ?? 0) + 1;

/** The duty that a log was most likely driven with: the advised one, else the last one. */
function dutyForLog(advice: DutyAdvice | null, pulls: readonly Pull[]): number | null {
  return advice?.duty ?? pulls.at(-1)?.dutyPct ?? null;
}
