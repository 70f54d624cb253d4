import { bestTrial, type Matching } from './align.ts';
import { LIMITS, type Reason } from './answer.ts';
import { worked, type Worked } from './seat.ts';
import { mirrored } from './turn.ts';

/**
 * Why a part whose pads cannot be laid on those of the same pins may still look as if it fitted: the shape agrees and the pins do not, or it agrees only
 * as seen from the other side. Undefined when neither explains it.
 */
export function pinOrderReason(part: Worked, place: Worked, byName: Matching): Reason | undefined {
  if (part.lands.length > place.lands.length) return undefined;
  const over = worked(mirrored(part.pattern));
  const flipped = {
    ...over,
    lands: over.lands.map((land) => ({ ...land, side: land.side === 'front' ? ('back' as const) : ('front' as const) })),
  };
  if (bestTrial(flipped, place, byName).score[1] >= LIMITS.overlap) return { code: 'other-side' };
  const { seat, partners, score } = bestTrial(part, place, { by: 'place' });
  if (score[0] < part.lands.length || score[1] < LIMITS.overlap) return undefined;
  const pairs = seat.lands.flatMap((land, i) =>
    partners[i]!.some(({ names }) => names.includes(land.names[0]!)) ? [] : [[land.names[0]!, partners[i]![0]!.names[0]!] as const],
  );
  return pairs.length > 0 ? { code: 'pin-order', pairs } : undefined;
}

/** Pins that mean something else in the two patterns, where both say what they mean. */
export function otherUse(part: Worked, place: Worked): Reason[] {
  const [own, others] = [part.pattern.nets, place.pattern.nets];
  const pins = Object.keys(own).filter((pin) => Object.hasOwn(others, pin) && own[pin]!.toLowerCase() !== others[pin]!.toLowerCase());
  return pins.length > 0 ? [{ code: 'other-use', pins }] : [];
}
