// npm run dev: dashboard and server that follow the sources, with the demo workshop of data/dev.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { build } from './steps/build.mjs';
import { checkNode } from './steps/check-node.mjs';
import { install } from './steps/install.mjs';
import { root } from './steps/root.mjs';
import { toolEnvironment } from './steps/tool-environment.mjs';

const port = Number(process.env.PORT || 3000);
const apiPort = port + 1;
checkNode();
await install();
await build();

const script = (relative) => path.join(root, 'node_modules', relative);
const start = (args, cwd, env) =>
  spawn(process.execPath, args, { cwd, env: { ...toolEnvironment(), ...env }, stdio: 'inherit' });

const parts = [
  start([script('typescript/bin/tsc'), '-b', 'apps/api', '--watch', '--preserveWatchOutput'], root, {}),
  start(['--watch', '--enable-source-maps', 'apps/api/dist/main.js'], root, {
    PULLBOOK_MODE: 'demo',
    PORT: String(apiPort),
    DATA_DIR: 'data/dev',
    DASHBOARD_DIR: 'none',
  }),
  start([script('next/dist/bin/next'), 'dev', '--port', String(port)], path.join(root, 'apps/web'), {
    PULLBOOK_API_URL: `http://127.0.0.1:${apiPort}`,
  }),
];
const stop = () => parts.forEach((part) => part.kill('SIGTERM'));
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, stop);
for (const part of parts) part.on('exit', stop);
