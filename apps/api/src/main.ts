import { DatabaseRefusedError } from '@pullbook/database';
import { demoLogins, demoPassword } from './demo/demo-people.js';
import { readSettings, SettingError } from './settings.js';
import { startServer, type RunningServer } from './start-server.js';

/** Longer than this nothing should take to finish; then the process ends anyway. */
const patienceMs = 10_000;

try {
  const settings = readSettings(process.env);
  const server = await startServer(settings);
  endWith(server);
  tell(server, settings.mode === 'demo');
} catch (error) {
  console.error(`Pullbook did not start: ${reasonOf(error)}`);
  process.exit(1);
}

function tell({ origin, firstOwnerCode }: RunningServer, isDemo: boolean): void {
  console.log(`\nPullbook is served at ${origin}`);
  if (isDemo) {
    console.log(`Demo workshop, on this machine only. Sign in with the password ${demoPassword} as`);
    for (const { role, email } of demoLogins) console.log(`  ${role.padEnd(6)} ${email}`);
  }
  if (firstOwnerCode !== null)
    console.log(`Nobody owns this book yet. Code for the first owner: ${firstOwnerCode}`);
  console.log('');
}

function endWith(server: RunningServer): void {
  let isEnding = false;
  const end = async (): Promise<void> => {
    if (isEnding) process.exit(1);
    isEnding = true;
    setTimeout(() => process.exit(1), patienceMs).unref();
    await server.close();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void end());
}

/** Settings and databases say in plain words what is wrong with them; of anything else the trace is wanted. */
function reasonOf(error: unknown): string {
  if (error instanceof SettingError || error instanceof DatabaseRefusedError) return error.message;
  const { code, message, stack } = error as NodeJS.ErrnoException;
  if (code === 'EADDRINUSE' || code === 'EACCES') return `HOST and PORT cannot be used: ${message}`;
  return stack ?? String(error);
}
