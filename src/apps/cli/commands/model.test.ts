import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
beforeEach(async () => {
  line = commandLine();
  expect(await line.salvor('model', 'new', 'Reed R1', '--copy-of', 'lamp-1')).toMatchObject({ code: 0 });
});
const out = async (...argv: string[]): Promise<string> => (await line.salvor(...argv)).out;

describe('a model that is begun on the command line', () => {
  it('is there at once, with what it inherits', async () => {
    expect(await out('models')).toMatch(/reed-r1 +Reed R1/);
    expect(await out('model', 'grown', 'reed-r1')).toContain('reed-r1, version 1: inherits Pocket lamp; 0 photos of its board');
    await line.salvor('add', 'lot', '--title', 'One', '--seller', 's', '--price', '5', '--items', 'Red:reed-r1:10');
    expect(await line.salvor('add', 'trial', '1', 'light', 'fails')).toMatchObject({ code: 0 });
  });

  it('takes what is told: numbers, words, whole entries, and says where each comes from', async () => {
    await line.salvor('model', 'tell', 'reed-r1', 'faults', 'switch-dirty', '0.35', '--field', 'rate');
    await line.salvor('model', 'tell', 'reed-r1', 'blocks', 'lens', '{"name":"Lens"}', '--measured');
    await line.salvor('model', 'tell', 'reed-r1', 'head', 'about', 'Of my own.');
    const shown = await out('model', 'grown', 'reed-r1');
    expect(shown).toMatch(/faults switch-dirty rate +0.35 +typed/);
    expect(shown).toMatch(/blocks lens +\{"name":"Lens"\} +measured/);
    expect(await out('models', 'reed-r1')).toMatch(/Of my own\.[\s\S]*lens +Lens/);
  });

  it('refuses what does not hold together, and what is no model of one’s own', async () => {
    const bad = await line.salvor('model', 'tell', 'reed-r1', 'blocks', 'bulb', 'null');
    expect(bad).toMatchObject({ code: 1 });
    expect(bad.err).toContain('which is not in blocks');
    expect((await line.salvor('model', 'tell', 'lamp-1', 'head', 'about', 'x')).err).toContain('does not grow here');
    expect(await line.salvor('model', 'new', 'Odd', '--slot', 'maybe')).toMatchObject({ code: 2 });
    expect(await line.salvor('model', 'grown', 'lamp-7')).toMatchObject({ code: 2 });
  });

  it('learns readings of known-good boards, typed and from a unit', async () => {
    expect(await out('model', 'teach', 'reed-r1', 'good-1', 'cell-v', '3,02 V')).toMatch(/cell-v +Cell voltage +3.02 V ± .* 1 board/);
    await line.salvor('add', 'lot', '--title', 'One', '--seller', 's', '--price', '5', '--items', 'Red:reed-r1:10');
    expect(await line.salvor('model', 'teach-unit', '1')).toMatchObject({ code: 1 });
    await line.salvor('add', 'reading', '1', 'cell-v', '3.04');
    expect(await out('model', 'teach-unit', '1')).toMatch(/3.03 V ± .* 2 boards/);
    expect((await line.salvor('model', 'teach', 'reed-r1', 'good-1', 'cell-v', '12 ohms')).err).toContain('measured in volts');
  });
});
