import path from 'node:path';
import { root } from './root.mjs';

/** The environment for tools: a home folder of our own where the machine gives none, and no word sent anywhere. */
export function toolEnvironment() {
  const homeless = !process.env.HOME && process.platform !== 'win32';
  return {
    ...process.env,
    ...(homeless ? { HOME: path.join(root, '.cache/home') } : {}),
    NEXT_TELEMETRY_DISABLED: '1',
    CHECKPOINT_DISABLE: '1',
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
    // prisma generate asks for a schema engine that it does not use: any program will do.
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
  };
}
