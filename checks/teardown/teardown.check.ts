import { describe, expect, it } from 'vitest';
import { criticalPath, guessedTime, sittingsOf, type Activity } from '../../src/core/teardown/index.ts';

/** See SOURCE.md. Arcs of the book as [from event, to event, weeks]; an arc waits for all that end where it begins. */
const ARCS = [
  [1, 2, 7],
  [1, 3, 10],
  [2, 4, 6],
  [3, 4, 5],
  [3, 5, 4],
  [4, 5, 3],
  [5, 6, 2],
] as const;

describe('the critical path against a textbook', () => {
  const name = ([from, to]: readonly [number, number, number]): string => `${from}-${to}`;
  const found = criticalPath(
    ARCS.map((arc): Activity => ({ id: name(arc), minutes: arc[2], after: ARCS.filter(([, to]) => to === arc[0]).map(name) })),
  );

  it('takes 20 weeks over the events 1, 3, 4, 5, 6', () => {
    expect(found.minutes).toBe(20);
    expect(found.path).toEqual(['1-3', '3-4', '4-5', '5-6']);
  });

  it('leaves the published slack', () => {
    expect(found.activities.map(({ slack }) => slack)).toEqual([2, 0, 2, 0, 4, 0, 0]);
  });
});

describe('guessed times against a textbook', () => {
  const GUESSES = {
    A: [1, 2, 3],
    B: [2, 3, 4],
    C: [1, 2, 3],
    D: [2, 4, 6],
    E: [1, 4, 7],
    F: [1, 2, 9],
    G: [3, 4, 11],
    H: [1, 2, 3],
  } as const;
  const AFTER: Readonly<Record<string, readonly string[]>> = { C: ['A'], D: ['B'], E: ['C'], F: ['C'], G: ['D', 'E'], H: ['F', 'G'] };
  const times = Object.entries(GUESSES).map(([id, [least, likely, most]]) => ({ id, ...guessedTime({ least, likely, most }) }));
  const found = criticalPath(times.map(({ id, mean }) => ({ id, minutes: mean, after: AFTER[id] ?? [] })));

  it('give 15 weeks over A, C, E, G, H with a variance of 3.1111', () => {
    expect(found.minutes).toBeCloseTo(15, 12);
    expect(found.path.join('')).toBe('ACEGH');
    const variance = times.filter(({ id }) => found.path.includes(id)).reduce((sum, each) => sum + each.variance, 0);
    expect(variance).toBeCloseTo(3.1111, 4);
    expect(Math.sqrt(variance)).toBeCloseTo(1.7638, 4);
  });
});

describe('sittings against the disassembly of eight parts', () => {
  const TIMES = [14, 10, 12, 18, 23, 16, 20, 36];
  const free = TIMES.map((minutes, i) => ({ id: String(i + 1), minutes, after: [] }));
  /** The published stations, as what comes before what: all of a station after all of the station before. */
  const STATIONS = [['1', '5'], ['3', '6', '2'], ['8'], ['7', '4']];
  const bound = free.map((task) => ({ ...task, after: STATIONS[STATIONS.findIndex((station) => station.includes(task.id)) - 1] ?? [] }));

  it('finds the four stations of 40 s with the published loads and unevenness', () => {
    const found = sittingsOf(bound, 40);
    expect(found).toMatchObject({ ok: true, minutes: [37, 38, 36, 38], unevenness: 33 });
    expect(found.ok && found.sittings.map((each) => [...each].sort())).toEqual(STATIONS.map((each) => [...each].sort()));
  });

  it('finds nothing better when nothing need come before anything else', () => {
    expect(sittingsOf(free, 40)).toMatchObject({ ok: true, unevenness: 33 });
  });
});
