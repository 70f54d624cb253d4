import { beforeEach, describe, expect, it } from 'vitest';
import { commandLine, type Run } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
const salvor = (...argv: string[]): Promise<Run> => line.salvor(...argv);

beforeEach(async () => {
  line = commandLine();
  await salvor('add', 'lot', '--title', 'Two lamps', '--seller', 'Fair', '--price', '24', '--items', 'Blue:lamp-1:20; Grey:lamp-1:10');
  for (const [item, name] of [
    ['1', 'bad.png'],
    ['2', 'good.png'],
  ] as const) {
    line.files.set(name, Buffer.from(`picture ${name}`));
    await salvor('add', 'photo', item, name, '--side', 'board-front');
  }
});

const photoOf = async (item: string): Promise<string> =>
  (JSON.parse((await salvor('show', item, '--json')).out) as { photos: { hash: string }[] }).photos[0]!.hash;

describe('salvor differences', () => {
  it('says that there is nothing to compare with, until a photo of a good board is chosen', async () => {
    expect(await salvor('differences', '1')).toMatchObject({
      code: 2,
      err: expect.stringContaining('Photograph a board that is known to work'),
    });
    const chosen = await salvor('reference', 'lamp-1', (await photoOf('2')).slice(0, 10));
    expect(chosen).toMatchObject({ code: 0 });
    const { code, out } = await salvor('differences', '1');
    expect(code).toBe(0);
    expect(out).toMatch(/90 %.*something is missing/);
    expect(out).toContain('1 less likely one(s) are left out');
    expect(out).toContain('Look here yourself, blinded by a highlight');
    expect((await salvor('differences', '1', '--strictness', '0')).out).toMatch(/20 %.*stain/);
    await salvor('reference', 'lamp-1', (await photoOf('2')).slice(0, 10), '--drop');
    expect((await salvor('differences', '1')).code).toBe(2);
  });

  it('names what it does not know', async () => {
    expect(await salvor('differences', '1', '--side', 'top')).toMatchObject({
      code: 2,
      err: expect.stringContaining('board-front or board-back'),
    });
    expect(await salvor('differences', '1', '--strictness', 'high')).toMatchObject({
      code: 2,
      err: expect.stringContaining('from 0 to 1'),
    });
    expect(await salvor('differences', '1', '--photo', 'ffff')).toMatchObject({ code: 2, err: expect.stringContaining('no photo "ffff"') });
    expect(await salvor('reference', 'lamp-1', 'ffff')).toMatchObject({ code: 2, err: expect.stringContaining('no photo "ffff"') });
  });
});
