import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
const out = async (...argv: string[]): Promise<string> => (await line.salvor(...argv)).out;
const tell = (rate: string) => line.salvor('model', 'tell', 'reed-r1', 'faults', 'switch-dirty', rate, '--field', 'rate');
beforeEach(async () => {
  line = commandLine();
  await line.salvor('model', 'new', 'Reed R1', '--copy-of', 'lamp-1');
  await tell('0.35');
  await line.salvor('model', 'teach', 'reed-r1', 'good-1', 'cell-v', '3');
});

describe('a model that is given away', () => {
  it('lists everything before it leaves, and writes nothing then', async () => {
    const listed = await out('model', 'give', 'reed-r1', '--list', '--author', 'Marsh Lane');
    expect(listed).toMatch(/This would leave:[\s\S]*Your name in it: Marsh Lane[\s\S]*faults switch-dirty rate: 0.35[\s\S]*"good-1": 3 V/);
    expect(line.files.size).toBe(0);
    expect(await line.salvor('model', 'give', 'lamp-1', 'x.zip')).toMatchObject({ code: 2 });
  });

  it('comes in as a new model, with whose word each fact is', async () => {
    await line.salvor('model', 'give', 'reed-r1', 'reed.zip', '--author', 'Marsh Lane');
    expect(await out('model', 'take', 'reed.zip')).toContain('is here as reed-r1-2, with 2 facts');
    const shown = await out('model', 'grown', 'reed-r1-2');
    expect(shown).toMatch(/faults switch-dirty rate +0.35 +typed by Marsh Lane/);
    expect(shown).toMatch(/cell-v .* 1 board/);
  });

  it('comes into another with conflicts side by side, and only as was said', async () => {
    await line.salvor('model', 'give', 'reed-r1', 'reed.zip', '--author', 'Marsh Lane');
    await tell('0.1');
    expect(await out('model', 'take', 'reed.zip', '--into', 'reed-r1')).toMatch(
      /faults switch-dirty rate +0.1 +0.35[\s\S]*Nothing is taken in yet/,
    );
    expect(await out('model', 'take', 'reed.zip', '--into', 'reed-r1', '--conflicts', 'ours')).toContain(
      '1 fact came in, 1 place differed',
    );
    expect(await out('model', 'grown', 'reed-r1')).toMatch(/rate +0.1 +typed$/m);
    await line.salvor('model', 'take', 'reed.zip', '--into', 'reed-r1', '--conflicts', 'theirs');
    expect(await out('model', 'grown', 'reed-r1')).toMatch(/rate +0.35 +typed by Marsh Lane$/m);
    expect(await line.salvor('model', 'take', 'reed.zip', '--into', 'lamp-1')).toMatchObject({ code: 2 });
  });
});
