import { expect, it } from 'vitest';
import { RECIPES } from '../../../bench/recipes/index.ts';
import { commandLine } from '../testing/command-line.ts';

const recipe = (...argv: string[]) => commandLine().salvor('recipe', ...argv);

it('lists the recipes by the names that it takes', async () => {
  const { out } = await recipe();
  expect(out.split('\n').map((line) => line.split(' ')[0])).toEqual([...RECIPES.keys()]);
});

it('shows dangers first, and heat by the solder', async () => {
  const leaded = await recipe('refresh-joint', '--solder', 'Sn63Pb37');
  expect(leaded.out).toMatch(/^Refresh a joint\n! Lithium cell/);
  expect(leaded.out).toContain('(tip 285 to 310 °C)');
  expect((await recipe('refresh-joint')).out).not.toContain('(tip 285');
});

it('refuses a recipe and a solder that it does not know', async () => {
  expect(await recipe('bake-it')).toMatchObject({ code: 2, err: expect.stringContaining('No recipe is called "bake-it"') });
  expect(await recipe('refresh-joint', '--solder', 'tin')).toMatchObject({ code: 2 });
});
