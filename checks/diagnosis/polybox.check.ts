import { describe, expect, it } from 'vitest';
import {
  believeReadings,
  kernelsOf,
  type Baseline,
  type ReadingFault,
  type ReadingPoint,
} from '../../src/core/diagnosis/readings/index.ts';

const PARTS = ['M1', 'M2', 'M3', 'A1', 'A2'] as const;
const SHIFTS = [-3, -2, -1, 1, 2, 3];
const FAULTS = PARTS.flatMap((part) => SHIFTS.map((by) => ({ part, by })));

/** F = A·C + B·D and G = B·D + C·E at A B C D E = 3 2 2 3 3, with outputs that are off by so much. */
function outputs(faults: readonly { readonly part: string; readonly by: number }[]): [number, number] {
  const off = (part: string): number => faults.reduce((sum, fault) => (fault.part === part ? sum + fault.by : sum), 0);
  const [x, y, z] = [3 * 2 + off('M1'), 2 * 3 + off('M2'), 2 * 3 + off('M3')];
  return [x + y + off('A1'), y + z + off('A2')];
}

const point = (id: string): ReadingPoint => ({ id, mode: 'volts', minutes: 1, side: 'front', stage: 'open', power: 'on' });
const faults = FAULTS.map(({ part, by }): ReadingFault => ({ id: `${part} ${by}`, block: 'box', part, rate: 0.05 }));
const dictionary = {
  faults,
  points: [point('F'), point('G')],
  draws: 1,
  values: Float64Array.from([outputs([]), ...FAULTS.map((fault) => outputs([fault]))].flat()),
};
const box: Baseline = {
  kernels: kernelsOf(dictionary, () => 0.05),
  functions: new Map(),
  simulate: (pairs, points) => Float64Array.from(pairs.flatMap(([a, b]) => points.map((p) => outputs([FAULTS[a]!, FAULTS[b]!])[p]!))),
};

describe('the polybox with F = 10 and G = 12', () => {
  const evidence = [
    { id: 'f', kind: 'reading', point: 'F', value: 10 },
    { id: 'g', kind: 'reading', point: 'G', value: 12 },
  ] as const;
  const { sets } = believeReadings([{ baseline: box, evidence }], { unknownRate: 0, noneRate: 0, pairs: 200 });

  it('is explained by exactly the four minimal candidates', () => {
    const candidates = new Map<string, number>();
    for (const { faults: ids, chance } of sets) {
      const parts = [...new Set(ids.map((id) => id.split(' ')[0]!))].sort().join(' ');
      candidates.set(parts, (candidates.get(parts) ?? 0) + chance);
    }
    const explaining = [...candidates].filter(([, chance]) => chance > 1e-3).map(([parts]) => parts.split(' '));
    const minimal = explaining.filter((set) => !explaining.some((other) => other !== set && other.every((part) => set.includes(part))));
    expect(minimal.map((set) => set.join(' ')).sort()).toEqual(
      ['A1', 'M1', 'M2 A2', 'M2 M3'].map((each) => each.split(' ').sort().join(' ')).sort(),
    );
  });

  it('is most likely one multiplier or one adder', () => {
    expect(
      sets
        .slice(0, 2)
        .map(({ faults: [only] }) => only)
        .sort(),
    ).toEqual(['A1 -2', 'M1 -2']);
  });
});
