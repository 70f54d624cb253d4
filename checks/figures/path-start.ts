import { openBrowser } from './browser.ts';
import { quantile } from './figure.ts';
import { startServer, temporaryHome } from './server-process.ts';

/** Median seconds from starting a process on a bench with the demo in it to its word that it is ready. */
export async function readySeconds(times: number): Promise<number> {
  const { home, remove } = temporaryHome();
  try {
    const first = await startServer(home);
    await first.stop();
    const sample: number[] = [];
    for (let i = 0; i < times; i++) {
      const server = await startServer(home);
      sample.push(server.readyS);
      await server.stop();
    }
    return quantile(sample, 0.5);
  } finally {
    remove();
  }
}

/**
 * Median seconds from asking for the first page with an empty cache until the plan of the demo pile stands on it
 * and answers a key. The browser itself is running already; its profile is new each time.
 */
export async function interactiveSeconds(times: number): Promise<number> {
  const { home, remove } = temporaryHome();
  const server = await startServer(home);
  const browser = await openBrowser();
  try {
    const sample: number[] = [];
    for (let i = 0; i < times; i++) {
      const context = await browser.newContext();
      const page = await context.newPage();
      const started = performance.now();
      await page.goto(server.url, { waitUntil: 'commit' });
      await page.locator('main a[href^="/bench/"]').first().waitFor();
      await page.locator('main a[href^="/bench/"]').first().focus();
      sample.push((performance.now() - started) / 1000);
      await context.close();
    }
    return quantile(sample, 0.5);
  } finally {
    await browser.close();
    await server.stop();
    remove();
  }
}
