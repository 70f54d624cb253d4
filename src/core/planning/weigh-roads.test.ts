import { describe, expect, it } from 'vitest';
import { surely } from './outcomes.ts';
import { weighRoads } from './weigh-roads.ts';

const road = <R extends string>(name: R, valueMinor: number, minutes = 0, possible = true) => ({
  road: name,
  possible,
  outcomes: surely(valueMinor),
  minutes,
});

describe('weighing the roads', () => {
  it('takes the one that brings most and says by how much', () => {
    const weighed = weighRoads([road('repair', 900), road('leave', 400), road('part-out', 700)]);
    expect(weighed.best).toBe('repair');
    expect(weighed.next).toEqual({ road: 'part-out', lessMinor: 200 });
  });

  it('never takes a road that is not possible', () => {
    expect(weighRoads([road('transplant', 9000, 0, false), road('leave', 1)])).toMatchObject({ best: 'leave', next: null });
    expect(() => weighRoads([road('transplant', 1, 0, false)])).toThrow(/at least one road/);
  });

  it('takes the quicker of two that bring the same', () => {
    expect(weighRoads([road('repair', 500, 60), road('leave', 500, 5)]).best).toBe('leave');
  });

  it('shows the tenth and ninetieth percentile of each', () => {
    const outcomes = [
      { valueMinor: -100, chance: 0.2 },
      { valueMinor: 300, chance: 0.5 },
      { valueMinor: 900, chance: 0.3 },
    ];
    const [worth] = weighRoads([{ road: 'repair', possible: true, outcomes, minutes: 1 }]).worth;
    expect(worth).toEqual({ road: 'repair', valueMinor: 400, lowMinor: -100, highMinor: 900 });
  });
});
