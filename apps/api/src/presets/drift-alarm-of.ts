import { DriftRule, type DriftAlarm } from '@pullbook/contracts';

interface AlarmRow extends Omit<DriftAlarm, 'rule'> {
  readonly rule: string;
}

/** The alarm in a row of the book; null where none stands. */
export function driftAlarmOf(row: AlarmRow | undefined): DriftAlarm | null {
  if (row === undefined) return null;
  return {
    rule: DriftRule.parse(row.rule),
    driftPct: row.driftPct,
    pullId: row.pullId,
    visitId: row.visitId,
    visitNumber: row.visitNumber,
    pullNumber: row.pullNumber,
    mayBeConditions: row.mayBeConditions,
    text: row.text,
  };
}
