import { greyOf, type Homography, type Pixels } from '../../src/core/vision/index.ts';
import { seenIn, warpedByHomography } from '../../src/core/vision/align/homography.ts';
import { inLightOf } from '../../src/core/vision/difference/match-light.ts';
import { gaussianBlur } from '../../src/core/vision/image/blur.ts';
import { components } from '../../src/core/vision/image/components.ts';
import { widened } from '../../src/core/vision/difference/candidates.ts';
import type { Box } from './vision-defects.ts';

const LEAST_PX = 12;
const JOIN_PX = 3;

/**
 * What a plain classical pipeline proposes at each limit of the grey difference: the pictures laid on one another by the one projective map `h`, in the same light,
 * smoothed, subtracted, cut at the limit, near groups joined.
 */
export function plainProposals(reference: Pixels, other: Pixels, h: Homography, limits: readonly number[]): Box[][] {
  const a = greyOf(reference);
  const b = greyOf(other);
  const laid = inLightOf(a, warpedByHomography(b, h, a.width, a.height));
  const seen = seenIn(h, a.width, a.height, b.width, b.height, 3);
  const [p, q] = [gaussianBlur(a, 1.5), gaussianBlur(laid, 1.5)];
  return limits.map((limit) => {
    const mask = new Uint8Array(a.data.length);
    for (let i = 0; i < mask.length; i++) if (seen[i] && Math.abs(p.data[i]! - q.data[i]!) > limit) mask[i] = 1;
    return components(widened(mask, a.width, JOIN_PX), a.width)
      .filter(({ pixels }) => pixels.filter((i) => mask[i]).length >= LEAST_PX)
      .map(({ left, top, right, bottom }): Box => [left + JOIN_PX, top + JOIN_PX, right + 1 - JOIN_PX, bottom + 1 - JOIN_PX]);
  });
}
