import type { Selling } from './asking-price.ts';
import { whereReaches } from '../numeric/index.ts';

export interface BidAnswer {
  readonly do: 'accept' | 'counter';
  /** The lowest price that is as good as waiting, minor units. */
  readonly reserveMinor: number;
  /** What to ask for instead: half way between what is as good as waiting and what is asked now. */
  readonly counterMinor: number;
  /** How much more taking it leaves than waiting; below zero it is less. */
  readonly gainMinor: number;
}

/** Whether to take a bid now, when waiting on is worth `worthMinor`. */
export function answerBid(bidMinor: number, askMinor: number, worthMinor: number, { net }: Pick<Selling, 'net'>): BidAnswer {
  const reserveMinor = whereReaches(net, worthMinor, 0, Math.max(askMinor, bidMinor) * 2 + 1);
  const gainMinor = net(bidMinor) - worthMinor;
  return {
    do: gainMinor >= 0 ? 'accept' : 'counter',
    reserveMinor,
    counterMinor: (reserveMinor + Math.max(askMinor, reserveMinor)) / 2,
    gainMinor,
  };
}
