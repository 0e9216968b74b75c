/** A pull whose boost is known at every moment. */
export interface MadePull {
  readonly rateHz: number;
  readonly durationS: number;
  /** Boost in kPa gauge, by time since full throttle. */
  readonly boostKpa: (sinceS: number) => number;
  readonly beforeKpa?: number;
}

export const START_S = 3;
const AFTER_S = 2;
const START_RPM = 2000;
const RPM_PER_S = 400;
const RPM_PER_KMH = 48;

/** A log with one pull in third gear, without noise, six decimals. */
export function madeLog({ rateHz, durationS, boostKpa, beforeKpa = 0 }: MadePull): string {
  const lines = ['Time (s),Boost (kPa gauge),Engine speed (rpm),Vehicle speed (km/h),Throttle (%),Gear'];
  const count = Math.round((START_S + durationS + AFTER_S) * rateHz);
  for (let row = 0; row <= count; row += 1) {
    const timeS = row / rateHz;
    const sinceS = timeS - START_S;
    const isPull = sinceS >= 0 && sinceS <= durationS;
    const boost = isPull ? boostKpa(sinceS) : beforeKpa;
    const rpm = isPull ? START_RPM + RPM_PER_S * sinceS : START_RPM;
    lines.push(
      [
        timeS.toFixed(4),
        boost.toFixed(6),
        rpm.toFixed(3),
        (rpm / RPM_PER_KMH).toFixed(4),
        isPull ? 100 : 15,
        3,
      ].join(','),
    );
  }
  return lines.join('\n');
}

/** Engine speed of the made pull. */
export function rpmAt(sinceS: number): number {
  return START_RPM + RPM_PER_S * sinceS;
}
