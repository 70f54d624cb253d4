import type { Step } from './step.ts';

/** A step of opening, with whether anything is put back when its way is gone backwards: of a photograph nothing is. */
export interface Reversible extends Step {
  readonly putBack: boolean;
}

/**
 * How to close again what was opened in this order: the same steps backwards, without those of which nothing is put back.
 * What a step stood on is then still open whenever it is put back, and it takes as many tools and turnings as opening did,
 * so that an order of least changes stays one of least changes.
 */
export const reassemblyOf = <S extends Reversible>(order: readonly S[]): S[] => order.filter(({ putBack }) => putBack).toReversed();
