import type { Role } from '@pullbook/contracts';
import type { WorkshopDatabase } from '@pullbook/database';

/** Who acts, for which workshop, on which database: the first argument of every service function. */
export interface Actor {
  readonly memberId: string;
  readonly name: string;
  readonly role: Role;
  readonly workshopId: string;
  /** Sees and writes this workshop's rows only. */
  readonly db: WorkshopDatabase;
  readonly now: () => Date;
  /** Set while a create with an Idempotency-Key is at work. */
  readonly keptReplyId?: string;
}
