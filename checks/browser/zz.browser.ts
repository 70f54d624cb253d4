import { it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { startBoardServer } from './board-server.ts';
import { brokenTern } from './broken-tern.ts';
import { AxeBuilder } from './axe.ts';
it('shots', async () => {
  const { home, remove } = temporaryHome();
  const server = await startBoardServer(home);
  server.record(brokenTern()); await (await fetch(server.url + '/api/items/tern')).text();
  const browser = await openBrowser();
  for (const screen of SCREENS) {
    const walk = await BenchWalk.begin(browser, server as unknown as ServerProcess, screen);
    const n = screen.touch ? 'phone' : 'desk';
    const shot = async (name: string, what: string) => { await walk.region(what).screenshot({ path: `/tmp/w/l2web/${n}-${name}.png` }); };
    await walk.goto('/bench/tern');
    console.log((await new AxeBuilder(walk.page).violations()).join('\n').slice(0, 1500));
    await walk.next().screenshot({ path: `/tmp/w/l2web/${n}-next.png` });
    await shot('belief', 'What may be wrong');
    await shot('board', 'Board');
    const board = walk.region('Board');
    await board.getByLabel('Part', { exact: true }).selectOption('U6');
    await walk.page.waitForTimeout(300);
    await shot('board-u6', 'Board');
    await walk.press(board, 'Let go');
    await walk.press(board, 'All of it');
    await walk.press(board, 'Mark an area');
    await board.getByLabel('From the left, mm').fill('24');
    await board.getByLabel('From below, mm').fill('5');
    await board.getByLabel('Wide, mm').fill('14');
    await board.getByLabel('High, mm').fill('9');
    await walk.page.waitForTimeout(200);
    await shot('board-area', 'Board');
    console.log((await new AxeBuilder(walk.page).violations()).join('\n').slice(0, 1500));
    if (screen.touch) { await walk.noted(() => walk.press(board, 'Residue')); await shot('board-area2', 'Board'); }
    const t0 = Date.now();
    await walk.next().getByRole('textbox').first().fill('OL');
    await walk.noted(() => walk.press(walk.next(), 'Note the reading'));
    console.log('noted ms', Date.now() - t0);
    await walk.page.waitForTimeout(500);
    await shot('belief2', 'What may be wrong');
    await shot('readings', 'Readings');
    await walk.goto('/models/tern-tn20');
    await shot('model', 'Board');
    try { await walk.end(); } catch (e) { console.log(JSON.stringify((e as any).actual).slice(0, 1500)); }
  }
  await browser.close(); await server.stop(); remove();
}, 200000);
