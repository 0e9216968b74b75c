import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { DashboardHandler } from './plumbing/dashboard.js';
import { SettingError } from './settings.js';

/** As much of Next's custom server as is used here. */
interface NextServer {
  prepare(): Promise<void>;
  getRequestHandler(): DashboardHandler;
  close(): Promise<void>;
}
type NextFactory = (options: { dev: boolean; dir: string; quiet: boolean }) => NextServer;

export interface OpenDashboard {
  readonly handler: DashboardHandler;
  readonly close: () => Promise<void>;
}

/**
 * Starts the built dashboard in this process. Next is looked up from the dashboard's own folder when it runs, so that
 * the API does not depend on the dashboard.
 * @throws SettingError where the folder holds no built dashboard
 */
export async function openDashboard(dir: string): Promise<OpenDashboard> {
  if (!existsSync(path.join(dir, '.next', 'BUILD_ID'))) {
    throw new SettingError(
      'DASHBOARD_DIR',
      `holds no built dashboard (${dir}): run npm run build, or set it to none`,
    );
  }
  const next = createRequire(path.join(dir, 'package.json'))('next') as NextFactory;
  const server = next({ dev: false, dir, quiet: true });
  await server.prepare();
  return { handler: server.getRequestHandler(), close: () => server.close() };
}
