'use client';

import type { DutyAdvice, Preset, Visit } from '@pullbook/contracts';
import { Button, ButtonLink } from '../../../../components/button/button';
import { useNotices } from '../../../../components/notices/notices';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { visitNumber } from '../../../../components/visit/visit-number';
import { useChangePreset } from '../../../../queries/presets/use-change-preset';
import { Expected } from './advice-part';
import styles from './visit.module.css';

interface AcceptPartProps {
  readonly preset: Preset;
  readonly visit: Visit;
  readonly advice: DutyAdvice;
}

const longestReason = 2000;

/** The duty makes the target and holds: keep it, as a new revision of the preset. */
export function AcceptPart({ preset, visit, advice }: AcceptPartProps) {
  const units = useUnits();
  const change = useChangePreset();
  const notices = useNotices();
  const [first, ...rest] = advice.reasons;
  const { duty } = advice;
  const isKept = duty !== null && preset.dutyPct === duty;
  const keep = () => {
    const why = advice.reasons.map((reason) => reason.text).join(' ');
    const reason = `Accepted on visit ${visitNumber(visit.number)}. ${why}`.slice(0, longestReason);
    change.mutate(
      { preset, change: { dutyPct: duty, reason } },
      { onSuccess: () => notices.done(`${duty} % is kept for ${preset.name}.`) },
    );
  };
  return (
    <section className={`sheet ${styles.next} ${styles.accept}`} aria-labelledby="next-title">
      <div className={styles.nextRow}>
        <div>
          <h2 id="next-title" tabIndex={-1} className={styles.nextLabel}>
            <span aria-hidden="true">✓ </span>
            {isKept ? 'Kept for this preset' : 'Accepted: it makes the target'}
          </h2>
          <p className={styles.huge} data-testid="next-duty">
            {duty}
            <span className={styles.unit}> %</span>
          </p>
        </div>
        <div className={styles.why}>
          <p className={styles.whyFirst}>{first === undefined ? null : units.sayReason(first)}</p>
          {rest.map((reason) => (
            <p key={reason.code} className="small">
              {units.sayReason(reason)}
            </p>
          ))}
          {advice.prediction === null ? null : <Expected prediction={advice.prediction} />}
        </div>
      </div>
      <ProblemNote error={change.error} />
      <div className="row">
        {isKept ? (
          <ButtonLink href={`/visits/${visit.id}/sign-off`} kind="act" big>
            To the sign-off
          </ButtonLink>
        ) : (
          <Button kind="act" big busy={change.isPending} onClick={keep}>
            Keep {duty} % for this preset
          </Button>
        )}
        <p className="soft small grow">
          Store it in the controller too: Pullbook does not reach into the car.
        </p>
      </div>
    </section>
  );
}
