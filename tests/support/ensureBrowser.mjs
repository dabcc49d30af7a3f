// Makes sure that the browser tests have a Chromium; says what to do where it cannot.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

function run(command, args) {
  console.log(`> ${command} ${args.join(' ')}`);
  execFileSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}

function found() {
  const named = process.env.CHROMIUM_PATH;
  if (named && !existsSync(named))
    throw new Error(`CHROMIUM_PATH names ${named}, which does not exist.`);
  return Boolean(named) || PLACES.some((place) => existsSync(place));
}

function install() {
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    run('apt-get', ['update', '-qq']);
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']);
  } else {
    run('npx', ['playwright', 'install', 'chromium']);
  }
}

try {
  if (!found()) install();
} catch (error) {
  console.error(
    `No Chromium for the browser tests (${error.message}). Install Chromium, or set CHROMIUM_PATH to a Chromium or Chrome, and run npm test again.`,
  );
  process.exit(1);
}
