import type { Controller, Preset } from '@pullbook/contracts';

/** Whether the gate hold is looked for: once the duty is kept, with a controller that has such a setting. */
export function looksForHold({ dutyPct }: Pick<Preset, 'dutyPct'>, controller: Controller | null): boolean {
  return dutyPct !== null && (controller?.holdPct ?? null) !== null;
}
