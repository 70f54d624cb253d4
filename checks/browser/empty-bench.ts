import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';

/** A browser and a server on an empty bench, there while the tests of a file run. */
export interface EmptyBench {
  readonly browser: Browser;
  readonly server: ServerProcess;
}

/** Opens both before the tests of the file that calls it, and takes them away after. */
export function emptyBench(): EmptyBench {
  let [browser, server]: [Browser?, ServerProcess?] = [];
  const { home, remove } = temporaryHome();
  beforeAll(async () => {
    browser = await openBrowser();
    server = await startServer(home, ['--empty']);
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    remove();
  });
  return {
    get browser() {
      return browser!;
    },
    get server() {
      return server!;
    },
  };
}
