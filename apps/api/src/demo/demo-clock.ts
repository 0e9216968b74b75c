/** The clock of the scenario: stands where it is put and goes on by the seconds that pass in it. */
export interface DemoClock {
  readonly now: () => Date;
  readonly set: (instant: Date) => void;
  readonly pass: (seconds: number) => void;
}

/** A clock that stands at an instant. */
export function demoClock(start: Date): DemoClock {
  let nowMs = start.getTime();
  return {
    now: () => new Date(nowMs),
    set: (instant) => void (nowMs = instant.getTime()),
    pass: (seconds) => void (nowMs += seconds * 1000),
  };
}
