import type { TraceIndex } from '@pullbook/contracts';
import { getBytes } from '../../client/request';
import type { TileAddress } from '../../components/traces/tile-store';

/** Fetches one tile; the browser keeps it, since it never changes under its address. */
export function loadTile(
  { log, build }: TraceIndex,
  { slot, level, tile }: TileAddress,
): Promise<ArrayBuffer> {
  const channel = slot === 0 ? 'time' : String(slot - 1);
  return getBytes(`/logs/${log.id}/traces/${build}/${channel}/${level}/${tile}`);
}
