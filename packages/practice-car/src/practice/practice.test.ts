import { leastOverBoostCut } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import {
  drawPracticeCar,
  judgePractice,
  PRACTICE_LEVELS,
  tellPracticeTruth,
  type PracticeCar,
  type PracticeEnding,
  type PracticePull,
  type PracticeTruth,
} from './index.js';

const RULES = { stepLimit: 10, requiredPulls: 3 };
const NUMBERS = [2, 5, 21];

/** Drives these duties one after the other. */
const drive = (car: PracticeCar, duties: readonly number[]): PracticePull[] =>
  duties.map((_, index) => car.pullAfter(duties.slice(0, index + 1)));

const judge = (
  car: PracticeCar,
  pulls: readonly PracticePull[],
  ending: PracticeEnding,
  aside: number[] = [],
) => {
  const acceptedDuty = ending.kind === 'accept' ? ending.duty : null;
  const truth = tellPracticeTruth(car, { pulls, acceptedDuty, stepLimit: RULES.stepLimit });
  const marked = pulls.map((pull, index) => ({ ...pull, isSetAside: aside.includes(index + 1) }));
  return {
    truth,
    codes: judgePractice({ sheet: car.sheet, pulls: marked, ending, truth, ...RULES }).map(
      ({ code }) => code,
    ),
  };
};

/** Up to the good duty in steps of ten, then until it is confirmed. */
const carefulDuties = (truth: PracticeTruth): number[] => {
  const good = truth.goodDuty ?? 100;
  const way = Array.from({ length: Math.ceil(good / 10) }, (_, step) => Math.min(good, 10 * (step + 1)));
  return [...way, good, good];
};

const wayOf = (car: PracticeCar): number[] =>
  carefulDuties(tellPracticeTruth(car, { pulls: [], acceptedDuty: null, stepLimit: 10 }));

describe.each(PRACTICE_LEVELS)('a practice car of the level %s', (level) => {
  it('is the same car for the same number, and its n-th pull scatters alike whatever came before', () => {
    const [one, same] = [drawPracticeCar({ level, number: 7 }), drawPracticeCar({ level, number: 7 })];
    expect(same.sheet).toEqual(one.sheet);
    expect(same.pullAfter([10, 20])).toEqual(one.pullAfter([10, 20]));
    expect(drawPracticeCar({ level, number: 8 }).sheet).not.toEqual(one.sheet);
  });

  it('has a target within reach of a setting unless it is doubtful, and the ceiling above target and tolerance', () => {
    for (const number of NUMBERS) {
      const car = drawPracticeCar({ level, number });
      const { goal, overBoostCutKpa } = car.sheet;
      expect(goal.ceilingKpa).toBeGreaterThan(goal.targetKpa + goal.toleranceKpa);
      expect(overBoostCutKpa).toBeGreaterThanOrEqual(leastOverBoostCut(goal.ceilingKpa));
      const truth = tellPracticeTruth(car, { pulls: [], acceptedDuty: null, stepLimit: 10 });
      if (level !== 'doubtful') expect(truth.goodDuty, `car ${number}`).not.toBeNull();
      if (level !== 'doubtful') expect(truth.fault).toBeNull();
    }
  });
});

describe('drawPracticeCar', () => {
  it('refuses a number that no car has', () => {
    for (const number of [0, 10_000, 1.5, NaN])
      expect(() => drawPracticeCar({ level: 'calm', number })).toThrow(/number/);
  });

  it('makes doubtful cars of three kinds: sound ones, ones that fail, ones whose target no duty makes', () => {
    const kinds = Array.from({ length: 16 }, (_, index) => {
      const car = drawPracticeCar({ level: 'doubtful', number: index + 1 });
      if (car.fault !== null) return 'fails';
      const { targetKpa, toleranceKpa } = car.sheet.goal;
      return car.soundMeanKpa(100, 0) < targetKpa - toleranceKpa ? 'short' : 'sound';
    });
    expect(new Set(kinds)).toEqual(new Set(['fails', 'short', 'sound']));
  });

  it('gives physical cars a trace that reaches the peak, and steep ones a gauge alone', () => {
    const pull = drawPracticeCar({ level: 'calm', number: 3 }).pullAfter([30]);
    expect(pull.trace?.timeS.length).toBe(pull.trace?.boostKpa.length);
    expect(Math.max(...(pull.trace?.boostKpa ?? []))).toBeGreaterThan(0.97 * pull.recordedPeakKpa);
    expect(drawPracticeCar({ level: 'steep', number: 3 }).pullAfter([30]).trace).toBeNull();
  });
});

describe('tellPracticeTruth', () => {
  it('tells a curve that never falls, a mean at the accepted duty inside the tolerance, and progress up to the end', () => {
    const car = drawPracticeCar({ level: 'calm', number: 4 });
    const duties = wayOf(car);
    const shares: number[] = [];
    const end = { pulls: drive(car, duties), acceptedDuty: duties.at(-1) ?? null, stepLimit: 10 };
    const truth = tellPracticeTruth(car, end, (share) => shares.push(share));
    truth.curve.forEach(({ meanKpa }, index) =>
      // The gate's edges fall differently at each duty: a hair of unevenness is the model's, not the car's.
      expect(meanKpa).toBeGreaterThan(0.99 * (truth.curve[index - 1]?.meanKpa ?? 0)),
    );
    expect(Math.abs((truth.acceptedMeanKpa ?? 0) - car.sheet.goal.targetKpa)).toBeLessThanOrEqual(
      car.sheet.goal.toleranceKpa,
    );
    expect(truth.fewestPulls).toBe(Math.ceil(((truth.goodDuty ?? 0) - (duties[0] ?? 0)) / 10) + 1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(shares.at(-1)).toBeGreaterThan(0.9);
  });

  it('names the pull from which a fault was there and the one that first showed it', () => {
    const failing = Array.from({ length: 12 }, (_, index) =>
      drawPracticeCar({ level: 'doubtful', number: index + 1 }),
    ).filter(({ fault }) => fault !== null);
    expect(failing.length).toBeGreaterThan(2);
    for (const car of failing.slice(0, 2)) {
      const pulls = drive(car, wayOf(car));
      const { fault } = tellPracticeTruth(car, { pulls, acceptedDuty: null, stepLimit: 10 });
      const moved = pulls.findIndex((pull, index) => {
        const soundKpa = car.soundMeanKpa(pull.duty, index + 1);
        return Math.abs(pull.trueMeanKpa / soundKpa - 1) > 0.03;
      });
      expect(fault?.seenAtPull ?? 0).toBe(moved + 1);
      if (fault?.seenAtPull) expect(fault.seenAtPull).toBeGreaterThanOrEqual(fault.fromPull);
    }
  });
});

describe('judgePractice', () => {
  const car = drawPracticeCar({ level: 'calm', number: 4 });
  const way = wayOf(car);
  const good = way.at(-1) ?? 0;

  it('finds nothing to mind in a careful way to the true duty', () => {
    const { codes } = judge(car, drive(car, way), { kind: 'accept', duty: good });
    expect(codes).toEqual(['accepted-true', 'ceiling-kept', 'steps-kept', 'confirmed', 'few-pulls']);
  });

  it('minds a step over the limit, too few confirming pulls and a duty that is off', () => {
    const { codes } = judge(car, drive(car, [10, 25]), { kind: 'accept', duty: 25 });
    expect(codes).toContain('accepted-off');
    expect(codes).toContain('steps-over');
    expect(codes).toContain('confirmed-too-little');
  });

  it('minds a ceiling passed on a sound car, and a stop where nothing was wrong', () => {
    const past = judge(car, drive(car, [10, 100]), { kind: 'ceiling' });
    expect(past.codes).toContain('ceiling-passed');
    expect(judge(car, drive(car, [10]), { kind: 'stop', because: 'fault' }).codes).toContain('stopped-sound');
  });

  it('does not hold a ceiling passed by a fault against the one who could not see it, and praises a stop in time', () => {
    const base = drive(car, [10, 20]);
    const faulty = {
      ...(base[1] as PracticePull),
      recordedPeakKpa: car.sheet.goal.ceilingKpa + 20,
      showsFault: true,
    };
    const truth: PracticeTruth = {
      ...tellPracticeTruth(car, { pulls: [], acceptedDuty: null, stepLimit: 10 }),
      fault: { name: 'actuator-line-off', fromPull: 2, seenAtPull: 2 },
    };
    const pulls = [base[0] as PracticePull, faulty].map((pull) => ({ ...pull, isSetAside: false }));
    const codesOf = (ending: PracticeEnding, more = 0) =>
      judgePractice({
        sheet: car.sheet,
        pulls: [...pulls, ...Array.from({ length: more }, () => ({ ...faulty, isSetAside: false }))],
        ending,
        truth,
        ...RULES,
      }).map(({ code }) => code);
    expect(codesOf({ kind: 'ceiling' })).toContain('ceiling-by-fault');
    expect(codesOf({ kind: 'stop', because: 'fault' })).toContain('stopped-at-fault');
    expect(codesOf({ kind: 'stop', because: 'fault' }, 3)).toContain('stopped-late');
    expect(codesOf({ kind: 'stop', because: 'out-of-reach' })).toContain('stopped-wrong-reason');
    expect(codesOf({ kind: 'accept', duty: 20 })).toContain('accepted-on-fault');
  });

  it('tells false pulls that were set aside from those that were kept, and minds a good one set aside', () => {
    const pulls = drive(car, way).map((pull, index) => ({ ...pull, isFalse: index === 1 }));
    const ending = { kind: 'accept', duty: good } as const;
    expect(judge(car, pulls, ending).codes).toContain('false-kept');
    expect(judge(car, pulls, ending, [2]).codes).toContain('false-set-aside');
    expect(judge(car, pulls, ending, [1]).codes).toContain('true-set-aside');
  });
});
