import type { Problem } from './problem.ts';

/** What is decided now. Mutable, because the search works on it. */
export interface Choice {
  /** By unit: whether it is opened, so that its assemblies lie in the pools; else it goes as it is. */
  readonly open: Uint8Array;
  /** By thing: its option; counts only while its unit is open. */
  readonly option: Uint8Array;
  /** By fill: how many are put in. */
  readonly fill: Int32Array;
}

/** Nothing is opened, nothing bought, nothing done. */
export const idleChoice = ({ units, things, fills }: Problem): Choice => ({
  open: new Uint8Array(units.length),
  option: new Uint8Array(things.length),
  fill: new Int32Array(fills.length),
});

export const copyOf = ({ open, option, fill }: Choice): Choice => ({ open: open.slice(), option: option.slice(), fill: fill.slice() });

/** Whether a thing lies in its pool. */
export const inPool = (problem: Problem, { open }: Choice, thing: number): boolean => {
  const { unit } = problem.things[thing]!;
  return unit < 0 || open[unit] === 1;
};
