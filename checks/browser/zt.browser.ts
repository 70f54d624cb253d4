import { it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { startBoardServer } from './board-server.ts';
import { brokenTern } from './broken-tern.ts';
it('times', async () => {
  const { home, remove } = temporaryHome();
  const server = await startBoardServer(home);
  server.record(brokenTern()); await (await fetch(server.url + '/api/items/tern')).text();
  const browser = await openBrowser();
  const walk = await BenchWalk.begin(browser, server as unknown as ServerProcess, SCREENS[0]!);
  await walk.goto('/bench/tern');
  let t0 = 0;
  walk.page.on('request', (r) => { if (t0) console.log('  ->', Math.round(performance.now() - t0), r.method(), new URL(r.url()).pathname); });
  walk.page.on('response', (r) => { if (t0) console.log('  <-', Math.round(performance.now() - t0), r.request().method(), new URL(r.url()).pathname); });
  for (const value of ['51k', '3.77', '5.04']) {
    const head = await walk.next().locator('.headline').innerText();
    const box = walk.next().getByRole('textbox').first();
    await box.fill(value).catch(() => {});
    const ok = await walk.next().getByRole('button', { name: 'Note the reading' }).isEnabled();
    if (!ok) await box.fill('1');
    const moved = await walk.region('What may be wrong').locator('.moved').innerText();
    await walk.page.evaluate((was) => {
      const w = window as any; w.__t = null;
      const started = { at: 0 };
      document.querySelector('#what-next button.main')!.addEventListener('click', () => { started.at = performance.now(); }, { capture: true });
      new MutationObserver(() => { const now = document.querySelector('.moved')?.textContent; if (w.__t === null && started.at && now !== was) requestAnimationFrame(() => { w.__t = performance.now() - started.at; }); }).observe(document.body, { subtree: true, childList: true, characterData: true });
    }, moved);
    t0 = performance.now();
    console.log(head);
    await walk.noted(() => walk.press(walk.next(), 'Note the reading'));
    await walk.page.waitForTimeout(600);
    console.log('on screen ms', await walk.page.evaluate(() => (window as any).__t));
    t0 = 0;
  }
  await browser.close(); await server.stop(); remove();
}, 200000);
