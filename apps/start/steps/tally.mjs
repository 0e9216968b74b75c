import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { root } from './root.mjs';
import { run } from './run.mjs';

/** Counts what passed and what failed over several tools, and says it in one last line. */
export class Tally {
  #passed = 0;
  #failed = 0;
  #failures = [];

  /** One tool that either passes or fails as a whole. */
  async check(name, command, args, options) {
    const started = performance.now();
    const { code, output } = await run(command, args, { quiet: true, ...options });
    this.#add(name, code === 0 ? 1 : 0, code === 0 ? 0 : 1, started);
    if (code !== 0) console.log(output);
  }

  /** A vitest run; every test counts. A run that executes no test counts as a failure. */
  async tests(name, args, options) {
    const started = performance.now();
    const report = path.join(fs.mkdtempSync(path.join(os.tmpdir(), 'tally-')), 'report.json');
    const { code } = await run(
      process.execPath,
      [
        'node_modules/vitest/vitest.mjs',
        'run',
        '--reporter=dot',
        '--reporter=json',
        `--outputFile.json=${report}`,
        ...args,
      ],
      options,
    );
    const counts = fs.existsSync(report) ? JSON.parse(fs.readFileSync(report, 'utf8')) : null;
    const passed = counts?.numPassedTests ?? 0;
    const failed = counts?.numFailedTests ?? 0;
    const unseen = failed === 0 && (code !== 0 || passed === 0) ? 1 : 0;
    this.#add(name, passed, failed + unseen, started);
  }

  #add(name, passed, failed, started) {
    this.#passed += passed;
    this.#failed += failed;
    if (failed > 0) this.#failures.push(name);
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`${failed > 0 ? 'FAILED' : 'ok'}  ${name}: ${passed} passed, ${failed} failed, ${seconds} s`);
  }

  /** Says the sum and ends the process. */
  finish() {
    if (this.#failures.length > 0) console.log(`Failed: ${this.#failures.join('; ')}`);
    console.log(`${this.#passed} passed, ${this.#failed} failed`);
    process.exit(this.#failed > 0 || this.#passed === 0 ? 1 : 0);
  }
}

/** Path of a tool's own script below node_modules, for running it by this Node. */
export const toolScript = (relative) => path.join(root, 'node_modules', relative);
