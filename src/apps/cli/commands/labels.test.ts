import { expect, it } from 'vitest';
import type { PrintedLabels } from '../../../bench/ports.ts';
import { commandLine } from '../testing/command-line.ts';

async function bench() {
  const line = commandLine();
  await line.salvor('init', '--currency', 'GBP');
  await line.salvor('add', 'lot', '--title', 'Two', '--seller', 's', '--price', '9', '--items', 'Blue:lamp-1:5; Grey:lamp-1:4');
  await line.salvor('add', 'part', 'bulb-3v', '--name', 'Bulb', '--price', '1', '--place', 'box 3');
  return line;
}

it('writes labels of units and bags on the sheet that was chosen', async () => {
  const line = await bench();
  const { code, out } = await line.salvor('labels', '2', '--bags', 'all', '--sheet', 'letter-30', '--skip', '4', '--out', 'l.pdf');
  expect([code, out]).toEqual([0, '2 labels on 1 page of Letter: l.pdf. Print it unscaled, at 100 %.']);
  const { widthMm, pages } = JSON.parse(new TextDecoder().decode(line.files.get('l.pdf'))) as PrintedLabels;
  expect(widthMm).toBe(215.9);
  expect(pages[0]!.map(({ words }) => words.title)).toEqual(['#2', 'Bulb']);
  expect(pages[0]![0]!.link).toMatch(/^http:\/\/127\.0\.0\.1:4780\/bench\/[-0-9a-f]+$/);
});

it.each([
  [['9'], /No item is called "9"/],
  [['1', '--bags', 'lost'], /No bag is called "lost"/],
  [['1', '--sheet', 'a5-1'], /"a5-1" is no sheet/],
  [['1', '--skip', 'some'], /--skip takes a number/],
  [['1', '--address', 'bench'], /is no address/],
  [[], /Name some items/],
])('refuses %j', async (args, message) => {
  expect(await (await bench()).salvor('labels', ...args)).toMatchObject({ code: 2, err: expect.stringMatching(message) });
});
