import fs from 'node:fs';
import { run } from './run.mjs';

const places = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];
const find = () => places.find((place) => place && fs.existsSync(place));

/** Path of a Chromium for the browser tests; on Debian it is installed from the distribution's own packages. */
export async function ensureChromium() {
  if (find()) return find();
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  const apt = (...args) => {
    const [command, ...rest] = [...asRoot, 'apt-get', ...args];
    return run(command, rest, { quiet: true, env: { DEBIAN_FRONTEND: 'noninteractive' } });
  };
  console.log('Installing Chromium for the browser tests (once) ...');
  await apt('update');
  const { code, output } = await apt('install', '-y', '--no-install-recommends', 'chromium');
  if (code === 0 && find()) return find();
  console.error(output);
  console.error('No Chromium found. Install one and name it in CHROMIUM_PATH.');
  process.exit(1);
}
