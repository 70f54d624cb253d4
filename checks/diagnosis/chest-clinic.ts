import type { Factor } from '../../src/core/diagnosis/index.ts';

/** The fictitious chest clinic of Lauritzen & Spiegelhalter (1988): chance of each variable being true, by its parents. */
export const VARIABLES = ['asia', 'tub', 'smoke', 'lung', 'bronc', 'either', 'xray', 'dysp'] as const;
export type Variable = (typeof VARIABLES)[number];
export type World = Readonly<Record<Variable, boolean>>;

export const TABLES: Readonly<Record<Variable, (world: World) => number>> = {
  asia: () => 0.01,
  tub: ({ asia }) => (asia ? 0.05 : 0.01),
  smoke: () => 0.5,
  lung: ({ smoke }) => (smoke ? 0.1 : 0.01),
  bronc: ({ smoke }) => (smoke ? 0.6 : 0.3),
  either: ({ tub, lung }) => (tub || lung ? 1 : 0),
  xray: ({ either }) => (either ? 0.98 : 0.05),
  dysp: ({ either, bronc }) => (either ? (bronc ? 0.9 : 0.7) : bronc ? 0.8 : 0.1),
};

/** Every set of true variables, 256 of them. */
export const SETS: readonly (readonly Variable[])[] = Array.from({ length: 2 ** VARIABLES.length }, (_, code) =>
  VARIABLES.filter((_name, i) => (code >> i) & 1),
);

const worldOf = (set: readonly Variable[]): World =>
  Object.fromEntries(VARIABLES.map((name) => [name, set.includes(name)])) as Record<Variable, boolean>;

/** The network as factors over sets: one table a variable, one factor for each thing that is known. */
export function factorsOf(known: Partial<World>): Factor<Variable>[] {
  const tables = VARIABLES.map((name): Factor<Variable> => (set) => {
    const chance = TABLES[name](worldOf(set));
    return set.includes(name) ? chance : 1 - chance;
  });
  const evidence = Object.entries(known).map(
    ([name, value]): Factor<Variable> =>
      (set) =>
        set.includes(name as Variable) === value ? 1 : 0,
  );
  return [...tables, ...evidence];
}

/** Written apart from the product: the same chances by eight nested choices, adding up the joint distribution of all worlds. */
export function byEnumeration(known: Partial<World>): Record<Variable, number> {
  const sums = Object.fromEntries(VARIABLES.map((name) => [name, 0])) as Record<Variable, number>;
  let all = 0;
  const visit = (depth: number, world: Partial<Record<Variable, boolean>>, joint: number): void => {
    const name = VARIABLES[depth];
    if (joint === 0) return;
    if (name === undefined) {
      all += joint;
      for (const each of VARIABLES) if (world[each]) sums[each] += joint;
      return;
    }
    for (const value of [true, false]) {
      if (known[name] !== undefined && known[name] !== value) continue;
      const chance = TABLES[name]({ ...world, [name]: value } as World);
      visit(depth + 1, { ...world, [name]: value }, joint * (value ? chance : 1 - chance));
    }
  };
  visit(0, {}, 1);
  return Object.fromEntries(VARIABLES.map((name) => [name, sums[name] / all])) as Record<Variable, number>;
}
