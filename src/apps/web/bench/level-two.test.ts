import { describe, expect, it } from 'vitest';
import type { BeliefView, CheckView, ItemFile } from '../../../bench/views/index.ts';
import { drawnParts } from '../board/drawn-part.ts';
import { leadMarks, likelyParts, seenMarks } from './board-marks.ts';
import { rangeWords } from './check-outcomes.tsx';
import { groupOf, hypothesisKey, hypothesisWords } from './hypothesis-words.ts';
import { sorted } from './reading-order.ts';

const fault = (id: string, ref: string) => ({ id, name: `${ref} ${id}`, block: 'fuse', refs: [ref] });
const believed = (faults: ReturnType<typeof fault>[], chance: number, alike: ReturnType<typeof fault>[] = []) => ({
  faults,
  unknown: false,
  chance,
  alike,
});
const open = fault('open', 'F1');
const gone = fault('gone', 'F1');
const dead = fault('dead', 'U6');

describe('the words of an outcome', () => {
  const words = (from: number | null, to: number | null, ol = false) => rangeWords({ outcome: 'x', range: { from, to, ol } }, 'ohms');

  it('are its range as a meter would show it', () => {
    expect([words(485.4, 1641), words(0, 0.8949), words(532_178, null), words(null, null, true)]).toEqual([
      '485 Ω to 1.64 kΩ',
      'Below 895 mΩ',
      'Above 532 kΩ',
      'OL',
    ]);
  });

  it('are its name where there is no range', () => {
    expect(rangeWords({ outcome: 'as-reference', range: null }, 'volts')).toBe('As on a good one');
  });
});

describe('a bar of the belief', () => {
  it('keeps its place whichever of those alike is named first', () => {
    expect(hypothesisKey(believed([open], 0.3, [gone]))).toBe(hypothesisKey(believed([gone], 0.2, [open])));
    expect(hypothesisKey(believed([], 0.3))).not.toBe(hypothesisKey({ ...believed([], 0.1), unknown: true }));
  });

  it('of a group has the remedy that serves all', () => {
    const group: BeliefView['groups'][number] = {
      faults: [open, gone],
      chance: 0.3,
      like_healthy: false,
      remedy: { id: 'r', name: 'New fuse' },
    };
    expect(groupOf([group], believed([open], 0.3, [gone]))?.remedy?.name).toBe('New fuse');
    expect(groupOf([group], believed([dead], 0.3))).toBeUndefined();
  });

  it('is named by its faults together', () => {
    expect(hypothesisWords(believed([open, dead], 0.1))).toBe('F1 open and U6 dead');
    expect(hypothesisWords(believed([], 0.1))).toBe('Nothing wrong');
  });
});

describe('the board', () => {
  it('shades parts by the chance of all that names them, those alike too, beside the likeliest', () => {
    const shades = new Map(
      likelyParts({ hypotheses: [believed([open], 0.6, [dead]), believed([dead], 0.2)] }).map((each) => [each.ref, each.shade]),
    );
    expect([...shades.keys()].sort()).toEqual(['F1', 'U6']);
    expect(shades.get('U6')! / shades.get('F1')!).toBeCloseTo(0.8 / 0.6, 9);
  });

  it('marks each lead at its handiest pad; a current has none', () => {
    const lead = (ref: string, pin: number) => ({ net: 'v', name: 'V', pads: [{ ref, pin, x_mm: 1, y_mm: 2, side: 'back' as const }] });
    const probe: NonNullable<CheckView['probe']> = {
      point: 'v.volts',
      red: lead('C25', 1),
      black: lead('TP16', 1),
      supply: null,
      power: { id: 'off', name: 'off' },
      set: [],
    };
    expect(leadMarks(probe).map((mark) => [mark.lead, mark.text, mark.side])).toEqual([
      ['red', 'C25 pin 1', 'back'],
      ['black', 'TP16', 'back'],
    ]);
    expect(leadMarks({ ...probe, red: null, black: null })).toEqual([]);
  });

  it('marks what was seen at its part, its block or over its area', () => {
    const parts = drawnParts([
      { ref: 'C1', x_mm: 3, y_mm: 4, rotation_deg: 0, side: 'back', value: '', package: '0603', block: 'fuse', nets: [null, null] },
    ]);
    const blocks = [{ id: 'fuse', name: 'Fuse', at: [7, 8] as [number, number] }];
    const seen = (place: string, sees: string, region: ItemFile['findings'][number]['region'] = null) => ({
      place,
      name: place,
      sees,
      event_id: `${place} ${sees}`,
      region,
    });
    const area = {
      side: 'front' as const,
      polygon: [
        [0, 0],
        [1, 0],
        [1, 1],
      ] as [number, number][],
    };
    const marks = seenMarks(
      [seen('C1', 'missing'), seen('fuse', 'burnt'), seen('fuse', 'residue', area), seen('C1', 'nothing-wrong')],
      blocks,
      parts,
    );
    expect(marks.map((mark) => [mark.text, mark.side, mark.at && [mark.at.x, mark.at.y]])).toEqual([
      ['C1: missing', 'back', [3, 4]],
      ['fuse: burnt', 'both', [7, 8]],
      ['fuse: residue, over an area', 'front', null],
    ]);
  });
});

describe('readings', () => {
  const of = (
    name: string,
    sigmas: number | null,
    value: number | null = 1,
    reference: string | null = '1 V',
  ): ItemFile['readings'][number] => ({
    point: name,
    name,
    mode: 'volts',
    value,
    reference,
    sigmas,
    expected: null,
    fits: null,
    event_id: name,
  });
  const readings = [of('TP10', -3), of('TP2', 1), of('TP3', null, null), of('TP4', null, 2, null)];
  const names = (order: Parameters<typeof sorted>[1]) => sorted(readings, order).map(({ name }) => name);

  it('come latest first, farthest off first, or by point', () => {
    expect(names('latest')).toEqual(['TP4', 'TP3', 'TP2', 'TP10']);
    expect(names('farthest')).toEqual(['TP3', 'TP10', 'TP2', 'TP4']);
    expect(names('point')).toEqual(['TP2', 'TP3', 'TP4', 'TP10']);
  });
});
