import { closedStages, readinessKeys, type DutyAdvice, type Stage } from '@pullbook/contracts';

/** What a preset's part of the sentence follows from. */
export interface PresetAtHand {
  readonly name: string;
  readonly hasTarget: boolean;
  readonly hasCeiling: boolean;
  readonly advice: DutyAdvice | null;
  readonly isProven: boolean;
  /** With the accepted duty stored: what is missing before it is proven; null before that. */
  readonly toProve: string | null;
}

/** What the sentence on a card follows from. */
export interface VisitAtHand {
  readonly stage: Stage;
  readonly now: Date;
  readonly bookedFor: Date | null;
  readonly promisedAt: Date | null;
  readonly hasController: boolean;
  readonly hasTuner: boolean;
  readonly presets: readonly PresetAtHand[];
  /** Of the newest tuning session; null where there is none yet. */
  readonly readiness: { readonly passed: boolean; readonly doneCount: number } | null;
  readonly report: 'none' | 'sent' | 'opened';
  /** How many items of the workshop's checklist a person ticks. */
  readonly itemsToTick: number;
}

export interface HoldUp {
  /** What holds the visit up, or what comes next, in one plain sentence. */
  readonly status: string;
  readonly needsAttention: boolean;
}

/** What holds a car up, or what comes next for it; attention where somebody has to decide or a promise is broken. */
export function holdUp(visit: VisitAtHand): HoldUp {
  const said = sayStage(visit);
  const isLate = visit.promisedAt !== null && visit.promisedAt < visit.now && isInWork(visit.stage);
  if (!isLate) return said;
  return { status: `${said.status}; promised time has passed`, needsAttention: true };
}

function isInWork(stage: Stage): boolean {
  return !closedStages.includes(stage);
}

const plainly = (status: string): HoldUp => ({ status, needsAttention: false });
const mindThis = (status: string): HoldUp => ({ status, needsAttention: true });

function sayStage(visit: VisitAtHand): HoldUp {
  switch (visit.stage) {
    case 'booked':
      return sayBooked(visit);
    case 'arrived':
      return sayWhatIsMissing(visit) ?? plainly(visit.hasTuner ? 'waits to go on test' : 'waits for a tuner');
    case 'on-test':
      return sayWhatIsMissing(visit) ?? sayTest(visit);
    case 'to-sign-off':
      return saySignOff(visit);
    case 'ready':
      return plainly(reportWords[visit.report]);
    case 'collected':
      return plainly('collected');
  }
}

const reportWords = {
  none: 'signed off; report not sent yet',
  sent: 'report sent',
  opened: 'report opened by the customer',
};

function sayBooked({ bookedFor, now }: VisitAtHand): HoldUp {
  if (bookedFor === null) return plainly('no time agreed yet');
  return bookedFor < now ? mindThis('booked time has passed; not arrived') : plainly('to come in');
}

function sayWhatIsMissing({ hasController, presets }: VisitAtHand): HoldUp | null {
  if (!hasController) return plainly('controller not described yet');
  if (presets.length === 0) return plainly('no preset wanted yet');
  const noTarget = presets.find((preset) => !preset.hasTarget);
  if (noTarget) return plainly(`no target agreed yet for ${noTarget.name}`);
  const noCeiling = presets.find((preset) => !preset.hasCeiling);
  return noCeiling ? plainly(`no ceiling agreed yet for ${noCeiling.name}`) : null;
}

function sayTest({ readiness, presets }: VisitAtHand): HoldUp {
  if (readiness === null) return plainly('no tuning session yet');
  if (!readiness.passed) {
    return plainly(`readiness check: ${readiness.doneCount} of ${readinessKeys.length} done`);
  }
  const stopped = presets.find((preset) => preset.advice?.action === 'stop');
  if (stopped) {
    const why = stopped.advice?.reasons[0]?.text ?? 'the advice gives no next pull';
    return mindThis(named(presets, stopped, `stopped: ${withoutFullStop(why)}`));
  }
  const next = presets.find((preset) => !preset.isProven);
  if (next === undefined) return plainly('every preset is proven; to sign off next');
  return plainly(
    named(presets, next, next.toProve === null ? nextStep(next.advice) : `to prove: ${next.toProve}`),
  );
}

function nextStep(advice: DutyAdvice | null): string {
  if (advice === null || advice.duty === null) return 'no advice is possible yet';
  if (advice.action === 'accept') return `store the accepted duty, ${advice.duty} %`;
  return advice.action === 'repeat' ? `next pull: ${advice.duty} % once more` : `next pull: ${advice.duty} %`;
}

/** Where a car has several presets, the sentence says which one it means. */
function named(presets: readonly PresetAtHand[], preset: PresetAtHand, text: string): string {
  return presets.length > 1 ? `${preset.name}: ${text}` : text;
}

function withoutFullStop(text: string): string {
  return text.replace(/\.$/, '');
}

function saySignOff({ presets, itemsToTick }: VisitAtHand): HoldUp {
  const unproven = presets.filter((preset) => !preset.isProven);
  if (unproven.length === 0) return plainly(`${itemsToTick} items open to sign off`);
  const names = unproven.map((preset) => preset.name).join(', ');
  return mindThis(`not proven yet: ${names}`);
}
