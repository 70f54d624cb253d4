import { AxeBuilder } from './axe.ts';
import { expect } from 'vitest';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import type { ServerProcess } from '../figures/server-process.ts';

export interface Screen {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly touch: boolean;
}

export const SCREENS: readonly Screen[] = [
  { name: 'a desktop', width: 1280, height: 800, touch: false },
  { name: 'a phone', width: 390, height: 844, touch: true },
];

/** A person at the bench: what they see and press, by the names that a screen reader reads. */
export class BenchWalk {
  private constructor(
    readonly page: Page,
    private readonly context: BrowserContext,
    private readonly server: Pick<ServerProcess, 'url'>,
    private readonly troubles: string[],
  ) {}

  static async begin(
    browser: Browser,
    server: Pick<ServerProcess, 'url'>,
    screen: Screen,
    colours: 'light' | 'dark' = 'light',
  ): Promise<BenchWalk> {
    const { width, height, touch } = screen;
    const context = await browser.newContext({
      viewport: { width, height },
      hasTouch: touch,
      isMobile: touch,
      colorScheme: colours,
      reducedMotion: 'reduce',
    });
    const page = await context.newPage();
    page.setDefaultTimeout(10_000);
    const troubles: string[] = [];
    page.on('console', (message) => ['error', 'warning'].includes(message.type()) && troubles.push(`console: ${message.text()}`));
    page.on('pageerror', (error) => troubles.push(`page: ${error.message}`));
    return new BenchWalk(page, context, server, troubles);
  }

  async goto(path: string): Promise<void> {
    await this.page.goto(this.server.url + path);
    await this.settled();
  }

  /** The page shows its heading and is not waiting for an answer. */
  async settled(): Promise<void> {
    await this.page.locator('main h1').first().waitFor();
    await this.page.waitForFunction(() => document.querySelectorAll('.waiting').length === 0);
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  /** The card that says what to do next; its name goes on with the advice itself. */
  next(): Locator {
    return this.page.getByRole('region', { name: /^What next/ });
  }

  async press(within: Locator, name: string | RegExp): Promise<void> {
    await within
      .getByRole('button', typeof name === 'string' ? { name, exact: true } : { name })
      .first()
      .click();
  }

  /** Opens a fold by its words, unless it is open. */
  async unfold(within: Locator, words: string | RegExp): Promise<Locator> {
    const fold = within
      .locator('details')
      .filter({ has: this.page.locator('summary', { hasText: words }) })
      .first();
    if ((await fold.getAttribute('open')) === null) await fold.locator('summary').first().click();
    return fold;
  }

  /** Does something that writes, and waits until the bench says that it is noted. */
  async noted(work: () => Promise<void>): Promise<void> {
    const before = await this.lastSeq();
    await work();
    await expect.poll(() => this.lastSeq(), { timeout: 20_000 }).toBeGreaterThan(before);
    await this.page.waitForTimeout(150);
    await this.settled();
  }

  private async lastSeq(): Promise<number> {
    const answer = (await (await fetch(`${this.server.url}/api/bench`)).json()) as { events: number };
    return answer.events;
  }

  async ask<T>(path: string): Promise<T> {
    return (await (await fetch(`${this.server.url}${path}`)).json()) as T;
  }

  /** The page as it stands breaks no rule of WCAG 2.2 A and AA, and has no sideways scroll. */
  async expectAccessible(): Promise<void> {
    await this.nothingOnItsWay();
    expect(await new AxeBuilder(this.page).violations(), `on ${this.page.url()}`).toEqual([]);
    const overflow = await this.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(overflow, `sideways scroll on ${this.page.url()}`).toBeLessThanOrEqual(0);
  }

  /** While something is on its way to the bench, buttons are pale and cannot be pressed: waits until as many are so as a moment ago. */
  private async nothingOnItsWay(): Promise<void> {
    let before = -1;
    for (let now = -2; now !== before;) {
      before = now;
      await this.page.waitForTimeout(200);
      now = await this.page.locator('button:disabled').count();
    }
  }

  async end(): Promise<void> {
    await this.context.close();
    expect(this.troubles).toEqual([]);
  }
}
