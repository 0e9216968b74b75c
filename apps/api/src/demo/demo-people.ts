import type { Role } from '@pullbook/contracts';
import { scopeToWorkshop, type OpenDatabase } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { hashPassword } from '../plumbing/passwords.js';

/** The password of the practice accounts: they count in demo mode alone, on this machine. */
export const demoPassword = 'practice-only';

/** The practice accounts, as the start tells them. */
export const demoLogins: readonly { readonly role: Role; readonly email: string; readonly name: string }[] = [
  { role: 'owner', email: 'owner@pullbook.example', name: 'Marta Kestrel' },
  { role: 'tuner', email: 'tuner@pullbook.example', name: 'Jonas Fenwick' },
  { role: 'desk', email: 'desk@pullbook.example', name: 'Priya Marsh' },
];

/** The people of the scenario as actors on its clock. */
export type DemoPeople = Readonly<Record<Role, Actor>>;

/** Signs the three practice people on where they are not there yet, and lets them act. */
export async function demoPeople(
  { client }: OpenDatabase,
  workshopId: string,
  now: () => Date,
): Promise<DemoPeople> {
  const db = scopeToWorkshop(client, workshopId);
  const passwordHash = await hashPassword(demoPassword);
  const actors: Partial<Record<Role, Actor>> = {};
  for (const { role, email, name } of demoLogins) {
    const known = await db.member.findFirst({ where: { email } });
    const member =
      known ??
      (await db.member.create({ data: { name, email, role, passwordHash, tourStep: 0, createdAt: now() } }));
    actors[role] = { memberId: member.id, name, role, workshopId, db, now };
  }
  return actors as DemoPeople;
}
