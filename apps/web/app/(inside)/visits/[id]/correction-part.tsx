'use client';

import type { CorrectionAdvice, NextCorrection, Preset, TuningSession } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { Button } from '../../../../components/button/button';
import { useNotices } from '../../../../components/notices/notices';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { useNextCorrection } from '../../../../queries/advice/use-next-correction';
import { useChangePreset } from '../../../../queries/presets/use-change-preset';
import styles from './visit.module.css';

interface CorrectionPartProps {
  readonly preset: Preset;
  readonly session: TuningSession;
}

/** Closed loop only: whether boost hunts or sags, and the strength to drive next. */
export function CorrectionPart({ preset, session }: CorrectionPartProps) {
  const next = useNextCorrection(session.id, preset).data;
  if (next === undefined || !next.applies || preset.dutyPct === null) return null;
  const { advice } = next;
  return (
    <section className={`sheet ${styles.correction}`} aria-labelledby="correction">
      <h2 id="correction">Correction strength</h2>
      {advice === null ? (
        <p className="soft">To say something: {next.missing.join('; ')}.</p>
      ) : (
        <CorrectionAnswer preset={preset} next={next} advice={advice} />
      )}
    </section>
  );
}

const titles = {
  keep: '✓ Keep',
  lower: '↓ Lower to',
  raise: '↑ Raise to',
  stop: '■ Stop',
} as const;

interface AnswerProps {
  readonly preset: Preset;
  readonly next: NextCorrection;
  readonly advice: CorrectionAdvice;
}

function CorrectionAnswer({ preset, next, advice }: AnswerProps) {
  const units = useUnits();
  return (
    <>
      <p className={styles.step} data-testid="next-correction">
        {titles[advice.action]} {advice.strength ?? ''}
      </p>
      {advice.reasons.map((reason) => (
        <p key={reason.code}>{units.sayReason(reason)}</p>
      ))}
      <Figures advice={advice} />
      <p className="small soft">
        From the {next.restsOnPulls.length === 1 ? 'log of pull' : 'logs of pulls'}{' '}
        {next.restsOnPulls.join(', ')}; last at strength {next.lastStrength}. Stop at any knock, lean reading
        or odd noise.
      </p>
      <KeepStrength preset={preset} advice={advice} />
    </>
  );
}

function Figures({ advice }: Readonly<{ advice: CorrectionAdvice }>) {
  const units = useUnits();
  const { settledErrorKpa, frequencyHz, dampingRatio } = advice;
  const side = settledErrorKpa >= 0 ? 'above' : 'below';
  return (
    <dl className={styles.expected}>
      <div>
        <dt>Settled error</dt>
        <dd>
          {units.peak(Math.abs(settledErrorKpa))} {units.pressureWord} {side} target
        </dd>
      </div>
      <div>
        <dt>Hunting</dt>
        <dd>
          {frequencyHz === null
            ? 'none that counts'
            : `${formatNumber(frequencyHz, 1)} Hz, damping ratio ${formatNumber(dampingRatio ?? 0, 2)}`}
        </dd>
      </div>
    </dl>
  );
}

function KeepStrength({ preset, advice }: Pick<AnswerProps, 'preset' | 'advice'>) {
  const change = useChangePreset();
  const notices = useNotices();
  const { strength, action } = advice;
  if (action !== 'keep' || strength === null) return null;
  if (preset.correctionStrength === strength) return <p className="soft">It is kept for this preset.</p>;
  const reason = advice.reasons.map((one) => one.text).join(' ');
  const keep = () =>
    change.mutate(
      { preset, change: { correctionStrength: strength, reason } },
      { onSuccess: () => notices.done(`Correction strength ${strength} is kept for ${preset.name}.`) },
    );
  return (
    <>
      <ProblemNote error={change.error} />
      <p>
        <Button kind="act" big busy={change.isPending} onClick={keep}>
          Keep strength {strength}
        </Button>
      </p>
    </>
  );
}
