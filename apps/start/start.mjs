// npm start (demo workshop, this machine only) and npm run serve (a real workshop).
import { spawn } from 'node:child_process';
import path from 'node:path';
import { build } from './steps/build.mjs';
import { checkNode } from './steps/check-node.mjs';
import { install } from './steps/install.mjs';
import { root } from './steps/root.mjs';
import { toolEnvironment } from './steps/tool-environment.mjs';

const mode = process.argv[2] ?? 'demo';
checkNode();
await install();
await build();

const server = spawn(process.execPath, ['--enable-source-maps', path.join(root, 'apps/api/dist/main.js')], {
  cwd: root,
  env: { NODE_ENV: 'production', ...toolEnvironment(), PULLBOOK_MODE: mode },
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => server.kill(signal));
server.on('exit', (code, signal) => process.exit(code ?? (signal ? 0 : 1)));
