import { expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

const reckon = (...argv: string[]) => commandLine().salvor('reckon', ...argv);

it('reckons with formula, source, range and what the value lies between', async () => {
  const { code, out } = await reckon('run-time', '--capacity-mah', '1000', '--current-ma', '100');
  expect(code).toBe(0);
  expect(out).toMatch(/^It lasts: 9 h \(7 h to 10 h\)\n {2}t = 0\.9 C \/ I; source: .*\n {2}Holds for: currents up to 1 C/);
});

it('takes what is left out as usual, and gives objects on wish', async () => {
  const { out } = await reckon('wire', '--json');
  expect(JSON.parse(out)).toMatchObject({ ok: true, answers: [{ label: 'Drop on it', reckoning: { unit: 'V' } }, {}, {}] });
});

it('asks which size is meant rather than guess, and refuses what is no number', async () => {
  expect(await reckon('part-code', '--part', 'size', '--mark', '0603')).toMatchObject({
    code: 2,
    err: expect.stringContaining('"0603" is the name of two chips'),
  });
  expect(await reckon('wire', '--current-a', 'much')).toMatchObject({ code: 2, err: expect.stringContaining('must be a number') });
});
