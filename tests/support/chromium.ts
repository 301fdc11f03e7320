/** Finds a browser for the tests: Playwright's own, the system's, or, as root on Debian, one that is installed now. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright';

const places = (): readonly string[] => [
  process.env.CHROMIUM ?? '',
  chromium.executablePath(),
  // Without windows, which a test has no eyes for: it is up in half the time.
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

const installed = (): string | undefined => places().find((path) => path !== '' && existsSync(path));

const HOW =
  'The browser tests need Chromium. Install it (Debian: apt-get install -y chromium-headless-shell; elsewhere: npx playwright install chromium), or name one: CHROMIUM=/path/to/it npm test';

const APT = '/usr/bin/apt-get';

export const findChromium = (): string => {
  const found = installed();
  if (found !== undefined) return found;
  if (process.getuid?.() !== 0 || !existsSync(APT)) throw new Error(HOW);
  process.stderr.write(
    'No Chromium for the browser tests yet: apt-get install -y chromium-headless-shell …\n',
  );
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const args of [
    ['update', '-qq'],
    ['install', '-y', '-qq', '--no-install-recommends', 'chromium-headless-shell', 'fonts-liberation'],
  ])
    spawnSync(APT, args, { env: environment, stdio: ['ignore', 'ignore', 'inherit'] });
  const now = installed();
  if (now === undefined) throw new Error(HOW);
  return now;
};
