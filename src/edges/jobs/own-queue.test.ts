import { expect, it } from 'vitest';
import { jobQueueContract } from './job-queue.contract.ts';
import { NOTED, openOwnQueue } from './own-queue.ts';

jobQueueContract('the queue in this process', () => openOwnQueue(() => new Date()));

it('remembers only so many jobs, the slowest of them', async () => {
  let now = 0;
  const queue = openOwnQueue(() => new Date(now));
  await queue.serve('wait', async (seconds: number) => void (now += seconds * 1000));
  for (let seconds = 1; seconds <= NOTED + 5; seconds++) await queue.ask('wait', seconds);
  const { slow } = await queue.report();
  expect(slow.map(({ seconds }) => seconds)).toEqual(Array.from({ length: NOTED }, (_, i) => NOTED + 5 - i));
});
