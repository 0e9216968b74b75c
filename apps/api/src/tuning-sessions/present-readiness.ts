import { ReadinessAnswer, readinessKeys, type ReadinessCheck } from '@pullbook/contracts';
import { judgeReadiness, type CutBounds, type ReadinessJudgement } from './judge-readiness.js';
import { readinessQuestions } from './readiness-questions.js';

interface ReadinessRow {
  readonly readiness: unknown;
  readonly readinessPassed: boolean;
  readonly readinessBy: string | null;
  readonly readinessAt: Date | null;
}

const noAnswer: ReadinessAnswer = { items: [], overBoostCutKpa: null, idleVacuumKpa: null };

/**
 * A readiness check as the API tells it.
 *
 * @param bounds limits and ceilings as they are now, to judge the answers on; null to tell what was judged then
 */
export function presentReadiness(row: ReadinessRow, bounds: CutBounds | null): ReadinessCheck {
  const answer = row.readiness === null ? noAnswer : ReadinessAnswer.parse(row.readiness);
  const { overBoostCutKpa, idleVacuumKpa } = answer;
  const answered = new Map(answer.items.map((item) => [item.key, item]));
  const okKeys = new Set(readinessKeys.filter((key) => answered.get(key)?.ok === true));
  const { passed, missing } =
    bounds === null ? judgedThen(row) : judgeReadiness({ okKeys, overBoostCutKpa, ...bounds });
  const items = readinessKeys.map((key) => ({
    key,
    question: readinessQuestions[key],
    ok: okKeys.has(key),
    note: answered.get(key)?.note ?? '',
  }));
  const checkedAt = row.readinessAt === null ? null : row.readinessAt.toISOString();
  return { items, overBoostCutKpa, idleVacuumKpa, passed, missing, checkedBy: row.readinessBy, checkedAt };
}

function judgedThen({ readinessPassed }: ReadinessRow): ReadinessJudgement {
  return {
    passed: readinessPassed,
    missing: readinessPassed ? [] : ['the readiness check was not passed'],
  };
}
