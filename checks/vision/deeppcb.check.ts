import { describe, expect, it } from 'vitest';
import { compare } from '../../src/core/vision/index.ts';
import { openPictureLibrary } from '../../src/edges/photos/picture-library.ts';
import { deepPcbCase, deepPcbNames, hasDeepPcb, turnedCase } from '../figures/vision-cases.ts';
import { alignmentError, proposedBoxes } from '../figures/vision-deeppcb.ts';
import { Tally } from '../figures/vision-score.ts';

if (!hasDeepPcb()) console.log('The pairs of DeepPCB are not beside the project (shared/data/deeppcb): the check on them is skipped.');

describe.skipIf(!hasDeepPcb())('published pairs of bare boards, a tenth of the measuring half', () => {
  it('gives nine in ten of the labelled defects, and hardly any other, aligned and turned', async () => {
    const library = await openPictureLibrary();
    const tally = new Tally();
    let silent = 0;
    for (const name of deepPcbNames('measuring').filter((_, i) => i % 10 === 3)) {
      for (const pair of [await deepPcbCase(name), await turnedCase(name)]) {
        const result = compare([pair.reference], pair.other, library);
        if (!result.ok) continue;
        if (pair.shot && alignmentError(result.alignment, pair) > 4) silent++;
        tally.add(
          pair.truth.map(({ box }) => box),
          proposedBoxes(pair, result.proposals),
        );
      }
    }
    expect(tally.hit + tally.missed).toBeGreaterThan(80);
    expect(tally.f1).toBeGreaterThan(0.9);
    expect(silent).toBe(0);
  });
});
