import { describe, expect, it } from 'vitest';
import { effortOf, USUAL_WEIGHTS } from './effort.ts';
import { fastenerCount } from './fastener-count.ts';
import { learnedMinutes } from './learned-minutes.ts';
import { planSteps } from './plan-steps.ts';
import { progressOf } from './progress.ts';
import { reassemblyOf } from './reassembly.ts';
import { randomSteps } from './testing/random-steps.ts';

describe('closing again', () => {
  it('goes backwards, without what leaves nothing to put back', () => {
    const opened = [
      { id: 'photograph', putBack: false },
      { id: 'screws', putBack: true },
      { id: 'back', putBack: true },
    ].map((step) => ({ ...step, needs: [], tool: null, side: null, minutes: 1, risk: 0 }));
    expect(reassemblyOf(opened).map(({ id }) => id)).toEqual(['back', 'screws']);
  });

  it('changes tools and turns over as often as opening did', () => {
    for (let seed = 0; seed < 30; seed++) {
      const { steps, goal } = randomSteps(`back ${seed}`, 8);
      const plan = planSteps(steps, goal);
      if (!plan.ok) continue;
      const back = effortOf(reassemblyOf(plan.order.map((step) => ({ ...step, putBack: true }))), USUAL_WEIGHTS);
      expect(back).toMatchObject({ toolChanges: plan.effort.toolChanges, turnings: plan.effort.turnings });
    }
  });
});

describe('where a person stands', () => {
  const order = ['a', 'b', 'c'].map((id) => ({ id, minutes: 2 }));

  it('is the first step that is not ticked, whatever order the ticks came in', () => {
    const at = progressOf(order, [
      { step: 'b', minutes: 3 },
      { step: 'a', minutes: 1 },
    ]);
    expect(at).toEqual({ next: 'c', done: 2, of: 3, minutesSpent: 4, minutesLeft: 2, unplanned: [] });
  });

  it('tells of steps that are not in the plan', () => {
    expect(progressOf(order, [{ step: 'z', minutes: 1 }]).unplanned).toEqual(['z']);
    expect(progressOf([], []).next).toBeNull();
  });
});

describe('minutes that are learned', () => {
  it('are those of the model where nothing was timed, and those of the person after many times', () => {
    expect(learnedMinutes(4, [])).toBe(4);
    expect(learnedMinutes(4, [0, -1])).toBe(4);
    expect(learnedMinutes(4, Array<number>(200).fill(2))).toBeCloseTo(2, 1);
  });

  it('are half way, as a ratio, after two times', () => {
    expect(learnedMinutes(4, [1, 1])).toBeCloseTo(2, 12);
  });

  it('are hardly moved by a clock that was forgotten', () => {
    expect(learnedMinutes(2, [2, 2, 2, 600])).toBeLessThan(2.5);
  });
});

describe('the count of fasteners', () => {
  const sets = [
    { id: 'back', count: 5 },
    { id: 'board', count: 4 },
  ];

  it('is even and whole when what came out went in', () => {
    const all = [
      { set: 'back', count: 5 },
      { set: 'board', count: 4 },
    ];
    expect(fastenerCount(sets, all, all)).toMatchObject({ even: true, whole: true });
  });

  it('knows what lies on the mat, and lets counts of one set add up', () => {
    const count = fastenerCount(
      sets,
      [{ set: 'back', count: 5 }],
      [
        { set: 'back', count: 2 },
        { set: 'back', count: 2 },
      ],
    );
    expect(count.sets[0]).toMatchObject({ out: 5, back: 4, onMat: 1, missing: 0 });
    expect(count.even).toBe(false);
  });

  it('puts the missing and the foreign on the shopping list, until they are made up for', () => {
    const out = [{ set: 'back', count: 4, foreign: 1 }];
    expect(fastenerCount([sets[0]!], out, out).sets[0]).toMatchObject({ missing: 1, foreign: 1, toBuy: 2 });
    const bought = fastenerCount([sets[0]!], out, [{ set: 'back', count: 5 }]);
    expect(bought.sets[0]).toMatchObject({ added: 1, toBuy: 1 });
    expect(bought).toMatchObject({ even: false, whole: false });
  });

  it('takes a set that the model does not have as foreign', () => {
    const { sets: counted } = fastenerCount([], [{ set: 'odd', count: 2 }], []);
    expect(counted).toEqual([{ set: 'odd', belongs: 0, out: 2, back: 0, missing: 0, foreign: 2, onMat: 2, added: 0, toBuy: 0 }]);
  });
});
