import { describe, expect, it } from 'vitest';
import { criticalPath } from './critical-path.ts';
import { sittingsOf } from './sittings.ts';

describe('work and waits side by side', () => {
  it('take as long as their longest chain', () => {
    const dry = criticalPath([
      { id: 'wash', after: [], minutes: 5 },
      { id: 'dry', after: ['wash'], minutes: 60 },
      { id: 'keys', after: [], minutes: 12 },
      { id: 'close', after: ['dry', 'keys'], minutes: 4 },
    ]);
    expect(dry.minutes).toBe(69);
    expect(dry.path).toEqual(['wash', 'dry', 'close']);
    expect(dry.activities.find(({ id }) => id === 'keys')!.slack).toBe(53);
  });

  it('are refused when they wait for each other or for nothing known', () => {
    const ring = [
      { id: 'a', after: ['b'], minutes: 1 },
      { id: 'b', after: ['a'], minutes: 1 },
    ];
    expect(() => criticalPath(ring)).toThrow(expect.objectContaining({ code: 'cycle' }));
    expect(() => criticalPath([{ id: 'a', after: ['x'], minutes: 1 }])).toThrow(expect.objectContaining({ code: 'unknown-step' }));
  });
});

describe('sittings', () => {
  const chain = (minutes: readonly number[]) => minutes.map((own, i) => ({ id: `t${i}`, minutes: own, after: i > 0 ? [`t${i - 1}`] : [] }));

  it('keep what must come before in the same or an earlier sitting', () => {
    const cut = sittingsOf(chain([10, 20, 25, 5]), 30);
    expect(cut).toMatchObject({
      ok: true,
      sittings: [
        ['t0', 't1'],
        ['t2', 't3'],
      ],
      minutes: [30, 30],
      unevenness: 0,
    });
  });

  it('of long work are cut in the order given', () => {
    const cut = sittingsOf(chain(Array<number>(20).fill(10)), 30);
    expect(cut.ok && cut.sittings.length).toBe(7);
    expect(cut.ok && cut.sittings.flat()).toEqual(chain(Array<number>(20).fill(10)).map(({ id }) => id));
  });

  it('are refused for a task that is longer than one', () => {
    expect(sittingsOf(chain([10, 40]), 30)).toEqual({ ok: false, code: 'task-too-long', id: 't1', minutes: 40 });
  });
});
