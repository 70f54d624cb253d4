import { describe, expect, it } from 'vitest';
import type { JobQueue } from '../../bench/ports-jobs.ts';

/** What every queue of jobs keeps to. `open` gives an empty one. */
export function jobQueueContract(name: string, open: () => JobQueue | Promise<JobQueue>): void {
  describe(`the contract of job queues, kept by ${name}: a job`, () => {
    it('is answered, its data and its answer exactly as they were', async () => {
      const queue = await open();
      await queue.serve('echo', async (job: unknown) => ({ job }));
      const job = { most: Infinity, nothing: undefined, list: [1, -0, NaN], text: 'Ω\u0000', at: new Map([['a', new Set([1])]]) };
      expect(await queue.ask('echo', job)).toEqual({ job });
      await queue.close();
    });

    it('that is asked for twice at once is done once', async () => {
      const queue = await open();
      let done = 0;
      await queue.serve('count', async ({ by }: { by: number }) => (done += by));
      expect(await Promise.all([queue.ask('count', { by: 2 }), queue.ask('count', { by: 2 })])).toEqual([2, 2]);
      expect(await queue.ask('count', { by: 3 })).toBe(5);
      await queue.close();
    });

    it('does not begin before the one before it is done', async () => {
      const queue = await open();
      const seen: string[] = [];
      await queue.serve('slow', async (job: string) => {
        seen.push(`${job} begins`);
        await new Promise((resolve) => setTimeout(resolve, 20));
        seen.push(`${job} ends`);
      });
      await Promise.all([queue.ask('slow', 'a'), queue.ask('slow', 'b')]);
      for (const at of [0, 2]) expect(seen[at + 1]).toBe(seen[at]!.replace('begins', 'ends'));
      await queue.close();
    });

    it('that fails is told to whoever asked, and done again when it is asked for again', async () => {
      const queue = await open();
      let isWell = false;
      await queue.serve('frail', async () => {
        if (!isWell) throw new TypeError('of somebody’s blue player');
        return 'well';
      });
      await expect(queue.ask('frail', 1)).rejects.toThrow();
      isWell = true;
      expect(await queue.ask('frail', 1)).toBe('well');
      await queue.close();
    });

    it('is reported by its name, its time and the kind of its trouble, never by what it was about', async () => {
      const queue = await open();
      await queue.serve('mixed', async (job: string) => {
        if (job === 'blue player') throw new TypeError('of somebody’s blue player');
        return job;
      });
      await queue.ask('mixed', 'fine');
      await queue.ask('mixed', 'blue player').catch(() => undefined);
      const report = await queue.report();
      expect(report.waiting).toBe(0);
      expect(report.slow).toMatchObject([{ name: 'mixed', seconds: expect.any(Number), error: null }]);
      expect(report.failed).toMatchObject([{ name: 'mixed', error: 'TypeError' }]);
      expect(JSON.stringify(report)).not.toContain('blue');
      await queue.close();
    });
  });
}
