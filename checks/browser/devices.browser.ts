import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { AxeBuilder } from './axe.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

let browser: Browser;
let server: ServerProcess;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  // As a phone on which the certificate was installed.
  browser = await openBrowser(['--ignore-certificate-errors']);
  server = await startServer(home, ['--empty', '--lan', '--lan-port', '0']);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

/** The link of a new invitation, as the code on the screen holds it. */
async function invitationLink(): Promise<string> {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(`${server.url}/api/devices/invites`, { method: 'POST', headers, body: JSON.stringify({ role: 'bench' }) });
  return ((await answer.json()) as { links: { url: string }[] }).links[0]!.url;
}

/** A browser that has been told to go on despite the warning about the certificate. */
const trustingContext = (width: number, height: number): Promise<BrowserContext> =>
  browser.newContext({ ignoreHTTPSErrors: true, viewport: { width, height }, reducedMotion: 'reduce' });

describe.each(SCREENS)('devices on $name', (screen) => {
  it('join by the code that the bench shows, work, and are let in no more when revoked', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/settings');
    const devices = walk.region('Devices');
    expect(await devices.innerText()).toMatch(/(?:[0-9A-F]{2}:){31}[0-9A-F]{2}/);
    await walk.press(devices, 'Let a device join');
    const code = devices.getByRole('img', { name: /^Code to scan/ });
    await code.waitFor();
    expect(await code.evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth > 0)).toBe(true);
    await walk.expectAccessible();

    const context = await trustingContext(screen.width, screen.height);
    const phone = await context.newPage();
    const troubles: string[] = [];
    phone.on('console', (message) => ['error', 'warning'].includes(message.type()) && troubles.push(message.text()));
    await phone.goto(await invitationLink());
    await phone.getByLabel('Name of this device').fill(`phone-${screen.width}`);
    expect(await new AxeBuilder(phone).violations()).toEqual([]);
    expect(await phone.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    await phone.getByRole('button', { name: 'Join' }).click();
    await phone.locator('main h1').first().waitFor();
    await phone.goto(new URL('/settings', phone.url()).href);
    await phone.getByText(`This device joined as phone-${screen.width}`).waitFor();
    expect(await phone.getByRole('region', { name: 'Devices' }).count()).toBe(0);
    expect(troubles).toEqual([]);

    await walk.goto('/settings');
    await walk.press(walk.region('Devices'), `Let in no more: phone-${screen.width}`);
    await walk.page.getByText(`phone-${screen.width} is let in no more`).waitFor();
    const status = await phone.evaluate(async () => (await fetch('/api/bench')).status);
    expect(status).toBe(401);
    await context.close();
    await walk.end();
  });
});
