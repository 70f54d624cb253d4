import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BenchView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const WORDS = 'Turns on but silent. The shell does the pfft. I think the keys work.';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('the words of a listing on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;

  beforeAll(async () => {
    server = await startServer(home, ['--empty']);
    walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/scout');
    await walk.page.getByLabel('Model', { exact: true }).selectOption('tern-tn20');
    await walk.page.getByLabel('Its words').fill(WORDS);
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  const group = () => walk.page.getByRole('group', { name: 'What its words say' });
  const says = (name: string, outcome: string) =>
    walk.page.getByRole('group', { name, exact: true }).getByRole('radio', { name: outcome, exact: true }).isChecked();

  it('are marked where a claim was read, with its rule', async () => {
    await group().locator('mark').first().waitFor();
    expect(await group().locator('mark.counts').allInnerTexts()).toEqual(['Turns on', 'silent']);
    expect(await group().locator('mark.doubtful').allInnerTexts()).toEqual(['keys work']);
    expect(await group().getByRole('listitem').first().innerText()).toContain('rule: turns on');
    await walk.expectAccessible();
  });

  it('are corrected and used', async () => {
    await group().getByLabel('What is said of Sound: fails').selectOption('comes-and-goes');
    await walk.press(group(), 'Use these claims');
    expect([await says('Starts', 'Works'), await says('Sound', 'Comes and goes'), await says('Keys', 'Not said')]).toEqual([
      true,
      true,
      true,
    ]);
  });

  it('can be taught', async () => {
    const fold = await walk.unfold(group(), 'Teach it words');
    await fold.getByLabel('These words').fill('does the pfft');
    await fold.getByLabel('say of').selectOption('closes');
    await walk.noted(() => walk.press(fold, 'Teach it'));
    expect(await walk.ask<BenchView>('/api/bench')).toMatchObject({
      taught_words: [{ words: 'does the pfft', claim: { about: 'function', function: 'closes', says: 'fails' } }],
    });
    await group().locator('mark.counts', { hasText: 'does the pfft' }).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, /^Forget/));
    expect(await walk.ask<BenchView>('/api/bench')).toMatchObject({ taught_words: [] });
    await walk.end();
  });
});
