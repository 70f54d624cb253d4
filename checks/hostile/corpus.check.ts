import { expect, it } from 'vitest';
import { sendCorpus } from './server-corpus.ts';

it('the server refuses everything hostile that can be sent to it with a sentence, writes nothing, and stays within bounds', async () => {
  const { met, written, peakMb } = await sendCorpus('the corpus of the check');
  expect(met.filter(({ fault }) => fault !== null)).toEqual([]);
  expect(met.length).toBeGreaterThan(60);
  expect(written).toEqual([]);
  expect(peakMb).toBeLessThan(1500);
});
