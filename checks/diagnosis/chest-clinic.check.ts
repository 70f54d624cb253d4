import { describe, expect, it } from 'vitest';
import { marginals, posteriorOverSets } from '../../src/core/diagnosis/index.ts';
import { byEnumeration, factorsOf, SETS, VARIABLES, type Variable, type World } from './chest-clinic.ts';

/** Published to four decimals; see SOURCE.md. */
const PUBLISHED: readonly { readonly known: Partial<World>; readonly chances: Partial<Record<Variable, number>> }[] = [
  { known: {}, chances: { tub: 0.0104, lung: 0.055, bronc: 0.45, either: 0.0648, xray: 0.1103, dysp: 0.436 } },
  { known: { asia: true, dysp: true }, chances: { tub: 0.0878, lung: 0.0995, bronc: 0.8114 } },
];

const posterior = (known: Partial<World>): Map<Variable, number> => marginals(SETS, posteriorOverSets(SETS, factorsOf(known)));

describe('the chest clinic of Lauritzen & Spiegelhalter', () => {
  it.each(PUBLISHED)('has its published chances given $known', ({ known, chances }) => {
    const found = posterior(known);
    for (const [name, chance] of Object.entries(chances)) expect(Math.abs(found.get(name as Variable)! - chance)).toBeLessThan(5e-5);
  });

  it('has the chances of full enumeration, whatever one or two things are known', () => {
    let compared = 0;
    let worst = 0;
    for (const one of VARIABLES)
      for (const other of VARIABLES)
        for (const values of [0, 1, 2, 3]) {
          if (one === other && values % 3 !== 0) continue;
          const known = { [one]: (values & 1) > 0, [other]: (values & 2) > 0 };
          if ((known.tub || known.lung) && known.either === false) continue;
          const [found, wanted] = [posterior(known), byEnumeration(known)];
          for (const name of VARIABLES) {
            worst = Math.max(worst, Math.abs((found.get(name) ?? 0) - wanted[name]));
            compared += 1;
          }
        }
    expect(compared).toBe(8 * (8 * 2 + 8 * 7 * 4 - 4));
    expect(worst).toBeLessThan(1e-12);
  });
});
