import { expect, it } from 'vitest';
import type { AppParts } from './app-parts.ts';
import { thinkAhead } from './think-ahead.ts';

const benchOf = (ids: readonly string[], asked: string[]): Pick<AppParts, 'bench' | 'door'> =>
  ({
    door: { quiet: async () => undefined, items: async () => ({ rows: ids.map((id) => ({ id })), next: null }) },
    bench: { item: (id: string) => void asked.push(id) },
  }) as unknown as AppParts;

it('thinks about each unit under work, and lets others speak in between', async () => {
  const asked: string[] = [];
  const between: number[] = [];
  const thinking = thinkAhead(benchOf(['a', 'b', 'c'], asked), () => false);
  setImmediate(() => between.push(asked.length));
  await thinking;
  expect(asked).toEqual(['a', 'b', 'c']);
  expect(between[0]).toBeLessThan(3);
});

it('stops when the server ends', async () => {
  const asked: string[] = [];
  await thinkAhead(benchOf(['a', 'b', 'c'], asked), () => asked.length === 1);
  expect(asked).toEqual(['a']);
});
