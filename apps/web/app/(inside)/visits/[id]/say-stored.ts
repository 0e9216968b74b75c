import type { Preset } from '@pullbook/contracts';

type Stored = Pick<Preset, 'dutyPct' | 'gateHoldPct' | 'correctionStrength'>;

/** The settings that a preset stores now, in words. */
export function sayStored({ dutyPct, gateHoldPct, correctionStrength }: Stored): string {
  if (dutyPct === null) return 'No duty is stored.';
  const parts = [
    `duty ${dutyPct} %`,
    ...(gateHoldPct === null ? [] : [`gate hold ${gateHoldPct} %`]),
    ...(correctionStrength === null ? [] : [`correction strength ${correctionStrength}`]),
  ];
  return `Stored now: ${parts.join(', ')}.`;
}
