import { expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

async function bench() {
  const line = commandLine();
  await line.salvor('init', '--currency', 'GBP');
  await line.salvor('add', 'lot', '--title', 'A lamp', '--seller', 'Marsh Lane', '--price', '5', '--items', 'Lamp:lamp-1:20');
  await line.salvor('add', 'receive', '1');
  return line;
}

it('says how to open an item and how to close it', async () => {
  const { code, out } = await (await bench()).salvor('open', '1', 'stage:board-out');
  expect(code).toBe(0);
  expect(out).toContain('1. Open it (2 × Cross 00, 5 mm), 2 min [open-lamp]');
  expect(out).toContain('2. Lift the board out, 4 min [board]');
  expect(out).toMatch(/Then to close it, each step backwards:\n {2}1\. Lift the board out\n {2}2\. Open it/);
});

it('lists the goals when the model has no such thing', async () => {
  const { out } = await (await bench()).salvor('open', '1', 'slot:lens');
  expect(out).toMatch(/^The model does not have that.*\nGoals:\n {2}stage:open {2}Open it/);
});

it('ticks a step with what came out, and tells what is missing, foreign and to be bought', async () => {
  const line = await bench();
  const { out } = await line.salvor('add', 'step', '1', 'open-lamp', '--fasteners', '1', '--foreign', '1', '--minutes', '3');
  expect(out).toContain('Came out of #1 Lamp: 1 of Screws, 1 of another kind.');
  expect(out).toContain('Looked at Screws of #1 Lamp: missing: 1 missing of: Screws.');
  const closing = await line.salvor('open', '1', 'stage:closed');
  expect(closing.out).toContain('Screws: 1 out, 0 back, 1 on the mat');
  expect(closing.out).toContain('To buy: 2 × Screws: Cross 00, 5 mm');
  await line.salvor('add', 'step', '1', 'open-lamp', '--back', '--fasteners', '1');
  expect((await line.salvor('open', '1', 'stage:closed')).out).toContain('Nothing more to open.');
});

it('writes the mat of a model, and refuses another paper', async () => {
  const line = await bench();
  expect((await line.salvor('mat', 'lamp-1', '--paper', 'Letter', '--out', 'mat.pdf')).out).toContain('Wrote mat.pdf: 1 page of Letter.');
  expect(new TextDecoder().decode(line.files.get('mat.pdf'))).toBe('%PDF Letter, 1 page(s)');
  expect(await line.salvor('mat', 'lamp-1', '--paper', 'A5', '--out', 'mat.pdf')).toMatchObject({ code: 2 });
  expect(await line.salvor('mat', 'lamp-7', '--out', 'mat.pdf')).toMatchObject({ code: 2 });
});
