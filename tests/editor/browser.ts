/** The browser that shows the editors: it can reach this machine and nothing else, and what it wanted besides is written down. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium } from 'playwright-core';
import * as places from './places.ts';

const launchOptions = {
  executablePath: places.chromium,
  args: [
    ...['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
    ...['--disable-background-networking', '--disable-component-update'],
    // Names of other machines are not even looked up.
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE *.localhost, EXCLUDE 127.0.0.1',
  ],
};

export const viewport = { width: 1280, height: 800 };

export const launchBrowser = (): Promise<Browser> => chromium.launch(launchOptions);

/** With a folder for what the browser remembers; cookies of a page inside a page are let through, as some editors need them. */
export function launchWithProfile(folder: string): Promise<BrowserContext> {
  mkdirSync(join(folder, 'Default'), { recursive: true });
  const preferences = { profile: { cookie_controls_mode: 0, block_third_party_cookies: false } };
  writeFileSync(join(folder, 'Default', 'Preferences'), JSON.stringify(preferences));
  return chromium.launchPersistentContext(folder, { ...launchOptions, viewport });
}

/** Refuses every request that is not for the host or below it; the list grows as they come. */
export async function confine(context: BrowserContext, host: string): Promise<readonly string[]> {
  const refused: string[] = [];
  const outside = (url: URL): boolean =>
    /^(?:https?|wss?):$/.test(url.protocol) && url.host !== host && !url.host.endsWith(`.${host}`);
  await context.route(outside, (route) => {
    refused.push(route.request().url());
    return route.abort();
  });
  return refused;
}
