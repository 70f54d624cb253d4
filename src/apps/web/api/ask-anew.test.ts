import { QueryClient, QueryObserver } from '@tanstack/react-query';
import { expect, it } from 'vitest';
import { askAnew } from './ask-anew.ts';

async function shown(...keys: readonly string[][]) {
  const client = new QueryClient();
  const asked: string[] = [];
  const answers = new Map<string, () => void>();
  for (const key of keys) {
    const name = key.join(' ');
    const ask = () =>
      new Promise((resolve) => {
        asked.push(name);
        answers.set(name, () => resolve(name));
      });
    new QueryObserver(client, { queryKey: key, queryFn: ask, staleTime: Infinity }).subscribe(() => null);
    answers.get(name)!();
  }
  await Promise.resolve();
  await new Promise((resolve) => setTimeout(resolve, 0));
  asked.length = 0;
  const answer = async (name: string): Promise<void> => {
    answers.get(name)!();
    await new Promise((resolve) => setTimeout(resolve, 0));
  };
  return { client, asked, answer };
}

it('asks for the unit on the bench first, and for the rest when it is there; what stands in files is not asked again', async () => {
  const { client, asked, answer } = await shown(['bench'], ['item', 'u1'], ['model', 'lamp'], ['drawer']);
  const done = askAnew(client);
  expect(asked).toEqual(['item u1']);
  await answer('item u1');
  await done;
  expect(asked).toEqual(['item u1', 'bench', 'drawer']);
});

it('waits for all on a page without a unit, and a unit seen before is asked for when it comes up again', async () => {
  const { client, asked, answer } = await shown(['pile']);
  client.setQueryData(['item', 'u1'], 'as before');
  let isDone = false;
  const done = askAnew(client).then(() => (isDone = true));
  await Promise.resolve();
  expect([asked, isDone]).toEqual([['pile'], false]);
  await answer('pile');
  await done;
  expect(client.getQueryState(['item', 'u1'])!.isInvalidated).toBe(true);
});

it('asks anew for a model that grows here, and for its points', async () => {
  const { client, asked, answer } = await shown(['model', 'reed'], ['points', 'reed'], ['points', 'lamp']);
  client.setQueryData(['model', 'reed'], { version: 3 });
  const done = askAnew(client);
  expect(asked).toEqual(['model reed', 'points reed']);
  await answer('model reed');
  await answer('points reed');
  await done;
});
