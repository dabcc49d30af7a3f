import { existsSync } from 'node:fs';

/** Where a Chromium may stand, first match wins; CHROMIUM_PATH overrides. */
export const CHROMIUM_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

/** Sandboxing is off for root only (Chromium refuses to start otherwise); the rest keeps it off the network. */
export const CHROMIUM_FLAGS: string[] = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--autoplay-policy=no-user-gesture-required',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-quic',
];

/** The Chromium to test with, as launch options; empty leaves the choice to Playwright's own download. */
export function chromiumAt(): { executablePath?: string } {
  const path = process.env['CHROMIUM_PATH'] ?? CHROMIUM_PLACES.find((place) => existsSync(place));
  return path ? { executablePath: path } : {};
}
