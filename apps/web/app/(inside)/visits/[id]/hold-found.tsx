'use client';

import type { GateHoldAdvice, Preset, Visit } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { Button } from '../../../../components/button/button';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { visitNumber } from '../../../../components/visit/visit-number';
import { useChangePreset } from '../../../../queries/presets/use-change-preset';
import { HoldExpected, Reasons, type AnswerProps } from './hold-words';
import styles from './visit.module.css';

interface HoldFoundProps extends AnswerProps {
  readonly preset: Preset;
  readonly visit: Visit;
}

const longestReason = 2000;

/** The hold that was found: what it gained, and the way on. */
export function HoldFound({ preset, visit, next, advice }: HoldFoundProps) {
  const change = useChangePreset();
  const notices = useNotices();
  const { holdPct } = advice;
  const isBack = advice.action === 'back-to-duty';
  const isKept = holdPct !== null && preset.gateHoldPct === holdPct;
  const keep = () => {
    const why = advice.reasons.map((reason) => reason.text).join(' ');
    const reason = `Gate hold found on visit ${visitNumber(visit.number)}. ${why}`.slice(0, longestReason);
    change.mutate(
      { preset, change: { gateHoldPct: holdPct, reason } },
      { onSuccess: () => notices.done(`${holdPct} % gate hold is kept for ${preset.name}.`) },
    );
  };
  return (
    <section className={`sheet ${styles.next} ${styles.accept}`} aria-labelledby="hold-title">
      <div className={styles.nextRow}>
        <div>
          <h2 id="hold-title" tabIndex={-1} className={styles.nextLabel}>
            {titleOf(isBack, isKept)}
          </h2>
          <Found holdPct={holdPct} isSmall={isKept || isBack} />
        </div>
        <div className={styles.why}>
          <Reasons advice={advice} />
          {isKept ? null : <HoldExpected next={next} advice={advice} />}
          <Gained gain={advice.gain} />
          {next.provingPullNumbers.length === 0 ? null : (
            <p className="small soft">Shown by pulls {next.provingPullNumbers.join(', ')}.</p>
          )}
        </div>
      </div>
      <ProblemNote error={change.error} />
      {isKept || holdPct === null ? null : (
        <div className="row">
          <Button kind="act" big busy={change.isPending} onClick={keep}>
            Keep {holdPct} % gate hold
          </Button>
          <p className="soft small grow">{isBack ? thenDuty : storeToo}</p>
        </div>
      )}
    </section>
  );
}

const thenDuty = 'Then find the duty again at this gate hold.';
const storeToo = 'Store it in the controller too: Pullbook does not reach into the car.';

function titleOf(isBack: boolean, isKept: boolean): string {
  if (isBack) return '↩ Back to duty: the peak has moved';
  return isKept ? '✓ Gate hold, kept' : '✓ Gate hold found';
}

function Found({ holdPct, isSmall }: Readonly<{ holdPct: number | null; isSmall: boolean }>) {
  if (holdPct === null) return null;
  return (
    <p className={isSmall ? styles.large : styles.huge} data-testid="next-hold">
      {holdPct}
      <span className={styles.unit}> %</span>
    </p>
  );
}

function Gained({ gain }: Readonly<{ gain: GateHoldAdvice['gain'] }>) {
  const { riseTimeS = null, onsetRpm = null } = gain ?? {};
  if (riseTimeS === null && onsetRpm === null) return null;
  return (
    <dl className={styles.expected}>
      <Gain name="Rise time" figure={riseTimeS} digits={2} words={['s shorter', 's longer']} />
      <Gain name="Onset" figure={onsetRpm} digits={0} words={['r/min earlier', 'r/min later']} />
    </dl>
  );
}

interface GainProps {
  readonly name: string;
  readonly figure: number | null;
  readonly digits: number;
  /** For better, for worse. */
  readonly words: readonly [string, string];
}

function Gain({ name, figure, digits, words }: GainProps) {
  if (figure === null) return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {formatNumber(Math.abs(figure), digits)} {figure >= 0 ? words[0] : words[1]}
      </dd>
    </div>
  );
}
