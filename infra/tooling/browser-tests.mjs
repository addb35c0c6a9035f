// The browser tests: finds a Chromium or, as root on Debian, installs one; without one it says so in a line and ends well.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = ['/Applications/Chromium.app/Contents/MacOS/Chromium', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'];

const runs = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

function findChromium() {
  const given = process.env.CHROMIUM;
  if (given && !runs(given)) throw new Error(`CHROMIUM names ${given}, which cannot be run. Correct it or leave it out.`);
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter)];
  return given ?? [...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))), ...PLACES].find(runs);
}

function install() {
  if (process.getuid?.() !== 0 || !runs('/usr/bin/apt-get')) return false;
  console.log('No Chromium here: installing Debian\'s.');
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...given) => spawnSync('apt-get', given, { stdio: ['ignore', 'ignore', 'inherit'], env: environment }).status === 0;
  return apt('install', '-y', '--no-install-recommends', 'chromium') || (apt('update') && apt('install', '-y', '--no-install-recommends', 'chromium'));
}

function run(command, given, environment = process.env) {
  const { status } = spawnSync(command, given, { cwd: root, stdio: 'inherit', env: environment });
  if (status !== 0) process.exit(status ?? 1);
}

const chromium = findChromium() ?? (install() ? findChromium() : undefined);
if (!chromium) {
  console.log('The browser tests did not run: no Chromium was found. Install one (Debian: apt-get install chromium) or set CHROMIUM to its path, then: npm run e2e');
} else {
  if (!['apps/api/dist/main.js', 'apps/board/dist/index.html'].every((file) => existsSync(join(root, file)))) run('npm', ['run', 'build']);
  run(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--config', 'infra/tooling/vitest.config.ts', '--project', 'e2e', '--passWithNoTests', ...process.argv.slice(2)], {
    ...process.env,
    CHROMIUM: chromium,
  });
}
