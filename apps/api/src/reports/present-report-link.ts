import type { ReportLink } from '@pullbook/contracts';

interface LinkRow {
  readonly id: string;
  readonly visitId: string;
  readonly createdAt: Date;
  readonly revokedAt: Date | null;
  readonly openedCount: number;
}

/** A report link as the API tells it: without its secret. */
export function presentReportLink(row: LinkRow): ReportLink {
  return {
    id: row.id,
    visitId: row.visitId,
    createdAt: row.createdAt.toISOString(),
    revokedAt: row.revokedAt?.toISOString() ?? null,
    openedCount: row.openedCount,
  };
}
