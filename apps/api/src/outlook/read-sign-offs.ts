import type { WorkshopTransaction } from '@pullbook/database';
import { z } from 'zod';
import type { PresetRecord } from '../presets/load-presets.js';
import { isAlike } from './kept-settings.js';

const Sealed = z.object({
  presets: z.array(
    z.object({ presetId: z.string(), dutyPct: z.number().nullable(), gateHoldPct: z.number().nullable() }),
  ),
});

/** Which of these visits were signed off with the preset at its stored settings. */
export async function readSignOffs(
  db: WorkshopTransaction,
  { id, values }: PresetRecord,
  visitIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await db.signOff.findMany({
    where: { visitId: { in: [...visitIds] } },
    select: { visitId: true, sealedText: true },
  });
  const covering = rows.filter(({ sealedText }) =>
    Sealed.parse(JSON.parse(sealedText)).presets.some(
      (sealed) =>
        sealed.presetId === id &&
        isAlike(sealed.dutyPct, values.dutyPct) &&
        isAlike(sealed.gateHoldPct, values.gateHoldPct),
    ),
  );
  return new Set(covering.map(({ visitId }) => visitId));
}
