import type { Health } from '@pullbook/contracts';
import type { OpenDatabase } from '@pullbook/database';
import type { z } from 'zod';
import { version } from '../plumbing/version.js';

const patienceMs = 2000;

/** Whether the book can be read at this moment; `busy` where its database does not answer in time. */
export async function getHealth(database: OpenDatabase): Promise<z.infer<typeof Health>> {
  let timer: NodeJS.Timeout | undefined;
  const answered = database.client.workshop.findFirst({ select: { id: true } }).then(
    () => true,
    () => false,
  );
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), patienceMs);
  });
  const isWell = await Promise.race([answered, late]);
  clearTimeout(timer);
  return { status: isWell ? 'ok' : 'busy', version, database: database.kind };
}
