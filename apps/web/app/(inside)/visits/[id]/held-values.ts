import type { Controller, NextPull, Pull, SettingRange } from '@pullbook/contracts';

interface Sources {
  readonly typed: { readonly dutyPct: string; readonly gear: string };
  readonly next: NextPull | undefined;
  readonly lastPull: Pull | undefined;
  readonly controller: Controller | null;
}

interface Held {
  readonly dutyPct: string;
  readonly gear: string;
}

const wholeRange: SettingRange = { min: 0, max: 100, step: 1 };

/** What the controller's duty can be set to; 0 to 100 % while the controller is not known. */
export function dutyRangeOf(controller: Controller | null): SettingRange {
  return controller?.dutyPct ?? wholeRange;
}

/** Duty and gear as they stand until a person changes them: the advised duty, the last pull's gear. */
export function heldValues({ typed, next, lastPull, controller }: Sources): Held {
  const gear = lastPull?.gear ?? '';
  return {
    dutyPct: typed.dutyPct || String(next?.advice?.duty ?? lastPull?.dutyPct ?? lowestDuty(controller)),
    gear: typed.gear || String(gear),
  };
}

const lowestDuty = (controller: Controller | null) => controller?.dutyPct.min ?? '';
