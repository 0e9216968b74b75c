import type { Controller, NextGateHold, Preset, Pull, PullNew } from '@pullbook/contracts';

/** Settings and figures of a pull beside duty, gear and peak; text until the pull is recorded. */
export const noMore = {
  holdPct: '',
  settledKpa: '',
  riseTimeS: '',
  correctionStrength: '',
  overrideOff: '',
  heldForS: '',
};
export type More = typeof noMore;

/** Figures that the keypad types into. */
export type PadField = 'peakKpa' | 'settledKpa' | 'riseTimeS' | 'heldForS';

interface MoreSources {
  readonly typed: More;
  readonly preset: Preset;
  readonly controller: Controller | null;
  readonly hold: NextGateHold | undefined;
  readonly lastPull: Pull | undefined;
}

/** Gate hold and correction strength as they stand until a person changes them: advised, last driven, stored, lowest. */
export function heldMore({ typed, preset, controller, hold, lastPull }: MoreSources): More {
  return {
    ...typed,
    holdPct: typed.holdPct || holdText({ preset, controller, hold, lastPull }),
    correctionStrength: typed.correctionStrength || strengthText({ preset, controller, lastPull }),
  };
}

function holdText({ preset, controller, hold, lastPull }: Omit<MoreSources, 'typed'>): string {
  if (!controller?.holdPct) return '';
  return firstOf([hold?.advice?.holdPct, lastPull?.holdPct, preset.gateHoldPct, controller.holdPct.min]);
}

function strengthText({ preset, controller, lastPull }: Omit<MoreSources, 'typed' | 'hold'>): string {
  if (!controller?.correction) return '';
  return firstOf([lastPull?.correctionStrength, preset.correctionStrength, controller.correction.min]);
}

function firstOf(figures: readonly (number | null | undefined)[]): string {
  return String(figures.find((figure) => typeof figure === 'number') ?? '');
}

interface MoreReading {
  readonly numberOrNull: (name: string) => number | null;
  readonly kpaOrNull: (name: string) => number | null;
}

/** The same as the contract wants it. */
export function readMore(from: MoreReading, preset: Preset, typed: More) {
  const isOverride = preset.kind === 'timed-override';
  return {
    holdPct: from.numberOrNull('holdPct'),
    settledKpa: from.kpaOrNull('settledKpa'),
    riseTimeS: from.numberOrNull('riseTimeS'),
    onsetRpm: null,
    correctionStrength: from.numberOrNull('correctionStrength'),
    overrideOn: isOverride ? typed.overrideOff !== 'yes' : null,
    heldForS: isOverride ? from.numberOrNull('heldForS') : null,
  } satisfies Partial<PullNew>;
}
