import type { SettingRange } from '@pullbook/contracts';
import { Prisma } from '@pullbook/database';

interface Ranges {
  readonly holdPct?: SettingRange | null | undefined;
  readonly correction?: SettingRange | null | undefined;
}

type Column = Prisma.InputJsonObject | typeof Prisma.DbNull;

/** The two ranges that a controller may lack, as their columns want them; what was left out stays out. */
export function rangeColumns({ holdPct, correction }: Ranges): { holdPct?: Column; correction?: Column } {
  return {
    ...(holdPct === undefined ? {} : { holdPct: holdPct ?? Prisma.DbNull }),
    ...(correction === undefined ? {} : { correction: correction ?? Prisma.DbNull }),
  };
}
