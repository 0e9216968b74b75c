import { describe, expect, it } from 'vitest';
import { dutySituation, type DutySituation } from './duty-situation.js';
import { predictPeak } from './predict-peak.js';
import { suddenRise } from './sudden-rise.js';

const situation = dutySituation({
  controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
  goal: { targetKpa: 100, toleranceKpa: 3, ceilingKpa: 108 },
  baseKpa: 88,
  pulls: [10, 20, 30].map((duty) => ({ duty, peakKpa: 90 })),
});
const riseIn = ({ pulls, posterior, levels }: DutySituation, duty: number) =>
  suddenRise(pulls, { duty, mixture: predictPeak(posterior, duty), ceiling: levels.ceiling });
const at = (duty: number) => riseIn(situation, duty);

describe('suddenRise(pulls, question)', () => {
  it('adds nothing where the car was pulled, nor so near that a steep rise cannot reach the ceiling', () => {
    for (const duty of [10, 25, 30, 31]) expect(at(duty)).toEqual({ chance: 0, excess: 0 });
  });

  it('adds nothing before the first pull: what lies below is not known', () => {
    const before = dutySituation({ ...situation.request, pulls: [] });
    expect(riseIn(before, 40)).toEqual({ chance: 0, excess: 0 });
  });

  // Source of the other answer: the same rise begun at each of many duties in turn, added up (a midpoint sum).
  it('is the sum over all duties at which the rise may begin', () => {
    const duty = 40;
    const { weights, centres } = predictPeak(situation.posterior, duty);
    const mean = centres.reduce((sum, centre, row) => sum + (weights[row] ?? 0) * centre, 0);
    const [count, perPoint, slope] = [4000, 0.002, 0.035];
    let [chance, excess] = [0, 0];
    for (let index = 0; index < count; index += 1) {
      const begins = 30 + ((duty - 30) * (index + 0.5)) / count;
      const over = mean + slope * (duty - begins) - situation.levels.ceiling;
      if (over <= 0) continue;
      chance += (perPoint * (duty - 30)) / count;
      excess += (over * perPoint * (duty - 30)) / count;
    }
    expect(chance).toBeGreaterThan(0.005);
    expect(at(duty).chance).toBeCloseTo(chance, 4);
    expect(at(duty).excess).toBeCloseTo(excess, 6);
  });

  it('grows with duty, and by a lower ceiling', () => {
    const chances = [34, 36, 38, 40].map((duty) => at(duty).excess);
    expect([...chances].sort((one, other) => one - other)).toEqual(chances);
    const lower = dutySituation({
      ...situation.request,
      goal: { ...situation.request.goal, ceilingKpa: 106 },
    });
    expect(riseIn(lower, 38).excess).toBeGreaterThan(at(38).excess);
  });
});
