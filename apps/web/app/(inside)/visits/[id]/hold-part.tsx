'use client';

import type { NextGateHold, Preset, TuningSession, Visit } from '@pullbook/contracts';
import { foundSoundAfter } from '@pullbook/next-pull';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { useUnsent } from '../../../../offline/use-outbox';
import { useNextGateHold } from '../../../../queries/advice/use-next-gate-hold';
import { sentence } from '../../../../components/form/sentence';
import { useUnits } from '../../../../components/units/use-units';
import { HoldFound } from './hold-found';
import { HoldExpected, Reasons } from './hold-words';
import { StopPart } from './stop-part';
import { useGoOn } from './use-go-on';
import styles from './visit.module.css';

interface HoldPartProps {
  readonly preset: Preset;
  readonly visit: Visit;
  readonly session: TuningSession;
  readonly pulls: readonly SeenPull[];
  readonly number: number | null;
}

/** The next gate hold, once the duty is kept and as long as the controller has one. */
export function HoldPart({ preset, visit, session, pulls, number }: HoldPartProps) {
  const next = useNextGateHold(session.id, preset).data;
  const goOn = useGoOn('hold-title');
  if (next === undefined || !next.ready || next.advice === null) return null;
  if (!restsOn(next, preset, pulls)) return <HoldUnsent pulls={pulls} />;
  const { advice } = next;
  if (advice.action === 'stop') {
    const title = { titleId: 'hold-title', what: ': gate hold' };
    return <StopPart visitId={visit.id} advice={advice} pulls={pulls} {...title} onSound={goOn} />;
  }
  if (advice.action === 'accept' || advice.action === 'back-to-duty') {
    return <HoldFound preset={preset} visit={visit} next={next} advice={advice} />;
  }
  return (
    <section className={`sheet ${styles.next} ${styles.nextRow}`} aria-labelledby="hold-title">
      <div>
        <h2 id="hold-title" tabIndex={-1} className={styles.nextLabel}>
          {number === null ? 'Next pull' : `Pull ${number}`}
          {advice.action === 'repeat' ? ': repeat with gate hold' : ': set gate hold to'}
        </h2>
        <p className={styles.huge} data-testid="next-hold">
          {advice.holdPct}
          <span className={styles.unit}> %</span>
        </p>
        <p className="soft">Leave duty at {next.dutyPct} %.</p>
      </div>
      <div className={styles.why}>
        <Reasons advice={advice} />
        <HoldExpected next={next} advice={advice} />
        <NotCounted next={next} />
        <p className="small soft">
          Type settled boost beside the peak, and the rise time if you have it; a log brings all of them. Stop
          at any knock, lean reading or odd noise.
        </p>
      </div>
    </section>
  );
}

interface HoldWaitsProps {
  readonly preset: Preset;
  readonly session: TuningSession;
}

/** What has to be done first, where the search for the gate hold has not begun. */
export function HoldWaits({ preset, session }: HoldWaitsProps) {
  const units = useUnits();
  const next = useNextGateHold(session.id, preset).data;
  const [first] = next?.missing ?? [];
  if (first === undefined) return null;
  return (
    <p className={`small soft ${styles.holdWaits}`}>
      <b>Gate hold comes next.</b> {sentence(units.say(first))}
    </p>
  );
}

/** The server alone works the gate hold out: what it does not know of yet has to go there first. */
function HoldUnsent({ pulls }: Readonly<{ pulls: readonly SeenPull[] }>) {
  const unsent = useUnsent();
  const isAbout = ({ id, unsent: isUnsent }: SeenPull) =>
    isUnsent === true || unsent.some(({ shows }) => (shows.foundSound ?? shows.voided)?.pullId === id);
  if (!pulls.some(isAbout)) return null;
  return (
    <p id="hold-title" tabIndex={-1} className={`small soft ${styles.holdWaits}`}>
      <b>Gate hold waits.</b> Its next advice comes once what was written down here is sent.
    </p>
  );
}

/** An answer to other pulls than those on record is not shown. */
function restsOn(next: NextGateHold, { dutyPct }: Preset, pulls: readonly SeenPull[]): boolean {
  const counted = pulls.filter(
    (pull) =>
      pull.voidedAt === null &&
      pull.usable &&
      pull.holdPct !== null &&
      pull.settledKpa !== null &&
      dutyPct !== null &&
      Math.abs(pull.dutyPct - dutyPct) <= 0.01,
  );
  // One from before the car was found sound would still say stop.
  if (next.foundSoundAfterPull !== foundSoundAfter(pulls.filter((pull) => pull.voidedAt === null)))
    return false;
  return next.restsOnPulls.join() === counted.map((pull) => pull.number).join();
}

function NotCounted({ next }: Readonly<{ next: NextGateHold }>) {
  if (next.notCountedPulls.length === 0 || next.restsOnPulls.length > 0) return null;
  return (
    <p className="small soft">
      {next.notCountedPulls.length === 1 ? 'Pull' : 'Pulls'} {next.notCountedPulls.join(', ')} cannot count
      here: gate hold or settled boost were not written down.
    </p>
  );
}
