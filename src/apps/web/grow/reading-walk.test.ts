import { describe, expect, it } from 'vitest';
import { AT_FIRST, changesTo, nextBoard, stopsOf, walkOrder, type WalkStop } from './reading-walk.ts';

const stop = (id: string, more: Partial<WalkStop> = {}): WalkStop => ({
  id,
  name: id,
  mode: 'diode',
  power: 'off',
  cautions: [],
  side: 'front',
  at: { x: 10, y: 10 },
  ...more,
});

describe('a walk over the points of a known-good board', () => {
  it('does all that is unpowered first, then powers it once, and turns it over as seldom as can be', () => {
    const stops = [
      stop('v1', { mode: 'volts', power: 'battery' }),
      stop('d1'),
      stop('back-d', { side: 'back' }),
      stop('o1', { mode: 'ohms' }),
      stop('v2', { mode: 'volts', power: 'battery', side: 'back' }),
      stop('d2'),
      stop('back-v', { side: 'back', mode: 'volts', power: 'battery' }),
    ];
    const order = walkOrder(stops);
    const changes = (of: 'power' | 'side' | 'mode'): number =>
      order.filter((each, i) => each[of] !== (order[i - 1] ?? AT_FIRST)[of]).length;
    expect([changes('power'), changes('side')]).toEqual([1, 2]);
    expect(order.slice(0, 4).map(({ power }) => power)).toEqual(['off', 'off', 'off', 'off']);
  });

  it('goes the short way with the probe where nothing else changes', () => {
    const stops = [30, 10, 20, 40].map((x) => stop(`p${x}`, { at: { x, y: 0 } }));
    expect(walkOrder(stops, { ...AT_FIRST, at: { x: 0, y: 0 } }).map(({ id }) => id)).toEqual(['p10', 'p20', 'p30', 'p40']);
  });

  it('goes on from how board and meter stand', () => {
    const stops = [stop('off'), stop('on', { power: 'battery', mode: 'volts' })];
    expect(walkOrder(stops, { ...AT_FIRST, power: 'battery', mode: 'volts' }).map(({ id }) => id)).toEqual(['on', 'off']);
  });

  it('says each change before the point, the power first', () => {
    const said = changesTo(AT_FIRST, stop('x', { power: 'battery', side: 'back', mode: 'volts' }));
    expect(said).toHaveLength(3);
    expect(said[0]).toContain('current limit');
    expect(changesTo(AT_FIRST, stop('x'))).toEqual([]);
  });

  it('finds the place of a point where its test point is marked, else where the model has it', () => {
    const point = {
      id: 'V33',
      name: 'V33',
      block: 'regulator',
      mode: 'volts',
      power: 'battery',
      stage: 'board-out',
      side: 'back',
    } as const;
    const mark = {
      ref: 'TP4',
      kind: 'test-point',
      value: 'V33',
      package: 'TP',
      side: 'front',
      x: 5,
      y: 6,
      rotation: 0,
      block: '',
      pins: [],
    } as const;
    expect(stopsOf({ points: [point] }, [mark])[0]).toMatchObject({ at: { x: 5, y: 6 }, side: 'front', cautions: ['esd'] });
    expect(stopsOf({ points: [{ ...point, at: [1, 2] }] }, [])[0]).toMatchObject({ at: { x: 1, y: 2 }, side: 'back' });
    const lithium = { chemistry: 'li-ion', volts: 3.7 } as const;
    expect(stopsOf({ points: [point], cell: lithium }, [])[0]).toMatchObject({ at: null, cautions: ['lithium-cell', 'esd'] });
  });
});

it('known-good boards are numbered on', () => {
  expect(nextBoard([])).toBe('good-1');
  expect(nextBoard([{ board: 'good-2' }, { board: 'mine' }])).toBe('good-3');
});
