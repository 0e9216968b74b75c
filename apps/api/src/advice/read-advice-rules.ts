import type { AdviceRules } from '@pullbook/next-pull';
import type { WorkshopTransaction } from '@pullbook/database';

/** The workshop's own rules for advice and proof. */
export interface WorkshopRules extends AdviceRules {
  /** Highest mean overshoot that a raised gate hold may bring, %. */
  readonly overshootLimitPct: number;
  /** Share of all pulls that a proof promises inside the tolerance, and with which confidence. */
  readonly coverageRatio: number;
  readonly confidenceRatio: number;
  /** Whether a preset has to be proven before it is signed off. */
  readonly signOffNeedsProof: boolean;
  /** Whether the advice leans on earlier cars of the same build. */
  readonly leansOnEarlierCars: boolean;
}

/** The workshop's own rules, as the owner set them. */
export async function readAdviceRules({
  db,
  workshopId,
}: {
  readonly db: WorkshopTransaction;
  readonly workshopId: string;
}): Promise<WorkshopRules> {
  const row = await db.workshop.findUniqueOrThrow({ where: { id: workshopId } });
  return {
    stepLimit: row.stepLimit,
    riskLimit: row.riskLimit,
    requiredPulls: row.requiredPulls,
    overshootLimitPct: row.overshootLimitPct,
    coverageRatio: row.coverageRatio,
    confidenceRatio: row.confidenceRatio,
    signOffNeedsProof: row.signOffNeedsProof,
    leansOnEarlierCars: row.leansOnEarlierCars,
  };
}
