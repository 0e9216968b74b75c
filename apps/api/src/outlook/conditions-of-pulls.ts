import { AirOfDay } from '@pullbook/contracts';
import type { PullConditions } from '@pullbook/tuning-math';

/** What is on record of the conditions of a pull. */
export interface WeatheredPull {
  readonly tuningSessionId: string;
  readonly gear: number | null;
  readonly gradientPct: number | null;
  readonly intakeC: number | null;
  readonly tuningSession: { readonly air: unknown };
}

/** Where the temperature of the intake air comes from: one source for all pulls, since the two do not compare. */
export type IntakeSource = 'pull' | 'session';

/**
 * The conditions of pulls. The intake air is each pull's own reading where all of them have one, and otherwise the air
 * that was written down for the tuning session; heat soak is how much warmer a pull's own reading is than the first of
 * its session. What lies outside of any driving is as good as not known.
 *
 * @param pulls in order of time
 */
export function conditionsOfPulls(pulls: readonly WeatheredPull[]): {
  readonly conditions: PullConditions[];
  readonly intakeSource: IntakeSource;
} {
  const isRead = pulls.length > 0 && pulls.every((pull) => pull.intakeC !== null);
  const firstRead = new Map<string, number>();
  for (const { tuningSessionId, intakeC } of pulls) {
    if (intakeC !== null && !firstRead.has(tuningSessionId)) firstRead.set(tuningSessionId, intakeC);
  }
  const conditions = pulls.map((pull): PullConditions => {
    const air = AirOfDay.parse(pull.tuningSession.air);
    const first = firstRead.get(pull.tuningSessionId) ?? null;
    const soakC = pull.intakeC === null || first === null ? null : pull.intakeC - first;
    return {
      gear: within(pull.gear, 1, 10),
      gradientPct: within(pull.gradientPct, -30, 30),
      intakeC: within(isRead ? pull.intakeC : air.temperatureC, -45, 90),
      barometerAbsKpa: within(air.pressureAbsKpa, 50, 115),
      heatSoakC: within(soakC, -40, 100),
    };
  });
  return { conditions, intakeSource: isRead ? 'pull' : 'session' };
}

function within(value: number | null, low: number, high: number): number | null {
  return value === null || value < low || value > high ? null : value;
}
