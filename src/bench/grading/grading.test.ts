import { describe, expect, it } from 'vitest';
import { GRADES, gradeByScale, SCALE_1 } from './index.ts';

describe('the grade by the written scale', () => {
  it('is the worst of what was judged, with what holds it back', () => {
    const found = gradeByScale(SCALE_1, { function: 0, picture: 0, battery: 25, marks: 1 });
    expect(found).toMatchObject({ scale: 'salvor-1', grade: 'C', heldBackBy: ['battery'] });
    expect(found.criteria.map(({ id, grade }) => `${id} ${grade}`)).toEqual(['function A', 'picture A', 'marks B', 'battery C']);
    expect(found.open).toEqual(['light', 'sound', 'distortion', 'colour', 'originality']);
  });

  it('is A with nothing to hold it back, and none where nothing was judged', () => {
    expect(gradeByScale(SCALE_1, { function: 0, colour: 2 })).toMatchObject({ grade: 'A', heldBackBy: [] });
    expect(gradeByScale(SCALE_1, {})).toMatchObject({ grade: null, criteria: [] });
  });

  it('is for parts beyond the last limit', () => {
    expect(gradeByScale(SCALE_1, { function: 3 })).toMatchObject({ grade: 'parts', criteria: [{ limit: null }] });
  });

  it('has limits that never get stricter for a worse grade, and words for the best and the worst or last', () => {
    for (const { atMost, examples } of SCALE_1.criteria) {
      const limits = GRADES.map((grade) => atMost[grade]);
      expect(limits).toEqual(limits.toSorted((a, b) => a - b));
      const [best, worst] = [examples.A, examples.C ?? examples.D];
      expect([best, worst]).toEqual([expect.stringMatching(/\p{L}{3}/u), expect.stringMatching(/\p{L}{3}/u)]);
      expect(best).not.toBe(worst);
    }
  });
});
