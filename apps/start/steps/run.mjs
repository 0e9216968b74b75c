import { spawn } from 'node:child_process';
import { root } from './root.mjs';
import { toolEnvironment } from './tool-environment.mjs';

/**
 * Runs a command to its end from the top folder.
 * quiet: keep its output and show it only when the command fails.
 * Returns { code, output }; never throws for a failing command.
 */
export function run(command, args, { quiet = false, env = {} } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      env: { ...toolEnvironment(), ...env },
      stdio: ['ignore', quiet ? 'pipe' : 'inherit', quiet ? 'pipe' : 'inherit'],
    });
    const chunks = [];
    child.stdout?.on('data', (chunk) => chunks.push(chunk));
    child.stderr?.on('data', (chunk) => chunks.push(chunk));
    child.on('error', (error) => resolve({ code: 127, output: String(error) }));
    child.on('close', (code) => resolve({ code: code ?? 1, output: Buffer.concat(chunks).toString() }));
  });
}
