import { describe, expect, it } from 'vitest';
import { netsOf } from '../../../core/netting/index.ts';
import { drawn } from './editor-part.ts';
import { beginEditor, tapped, withBrush } from './editor.ts';
import { contradictionWords, pinAt, pinNamed, probed, shownNets, type Found, type Leads } from './probing.ts';

const lifted: Leads = { held: null, beeps: true };
const NOTHING: Found = { joins: [], names: [] };
const joined = (...pins: string[]) => ({ pins, joined: true });

describe('probing', () => {
  it('holds one lead at the first pin, measures to each that follows, and lifts it at the same pin', () => {
    expect(probed(lifted, 'U1.3', NOTHING)).toEqual({ what: 'held', leads: { held: 'U1.3', beeps: true } });
    const held = { ...lifted, held: 'U1.3' };
    expect(probed(held, 'C4.1', NOTHING)).toEqual({ what: 'measured', join: joined('U1.3', 'C4.1'), against: [] });
    expect(probed({ ...held, beeps: false }, 'C4.2', NOTHING)).toMatchObject({ join: { pins: ['U1.3', 'C4.2'], joined: false } });
    expect(probed(held, 'U1.3', NOTHING)).toEqual({ what: 'held', leads: lifted });
  });

  it('questions two supplies becoming one net, and what was measured apart before', () => {
    const named: Found = {
      joins: [joined('U1.1', 'C1.1'), { pins: ['C1.1', 'C9.1'], joined: false }],
      names: [
        { pin: 'U1.1', name: 'v33' },
        { pin: 'U2.1', name: 'v50' },
      ],
    };
    const supplies = probed({ ...lifted, held: 'C1.1' }, 'U2.1', named);
    if (supplies.what !== 'measured') throw new Error('a measurement was expected');
    expect(supplies.against.map(({ code }) => code)).toEqual(['supplies-joined']);
    expect(contradictionWords(supplies.against[0]!)).toContain('two supplies');
    const apart = probed({ ...lifted, held: 'U1.1' }, 'C9.1', named);
    if (apart.what !== 'measured') throw new Error('a measurement was expected');
    expect(apart.against.map(({ code }) => code)).toEqual(['measured-apart']);
    expect(contradictionWords(apart.against[0]!)).toContain('once more');
  });

  it('does not question again what was contradictory before', () => {
    const before: Found = {
      joins: [joined('U1.1', 'U2.1')],
      names: [
        { pin: 'U1.1', name: 'v33' },
        { pin: 'U2.1', name: 'v50' },
      ],
    };
    expect(probed({ ...lifted, held: 'R1.1' }, 'R2.1', before)).toMatchObject({ against: [] });
  });
});

it('nets are listed with their names first, then by size, each with its own look', () => {
  const nets = netsOf(
    [joined('A1.1', 'A2.1'), joined('B1.1', 'B2.1', 'B3.1'), { pins: ['C1.1', 'C2.1'], joined: false }],
    [{ pin: 'A1.1', name: 'gnd' }],
  );
  expect(shownNets(nets).map(({ name, pins, look }) => [name, pins.length, look])).toEqual([
    ['ground', 2, 0],
    ['n_b1_1', 3, 1],
  ]);
});

it('a pin is found by pointing at it or by its name, the only pin of a part by the part', () => {
  const editor = tapped(withBrush(tapped(beginEditor([]), { x: 10, y: 10 }), { kind: 'test-point' }), { x: 20, y: 10 });
  const [r1, tp1] = [...editor.parts.values()].map((part) => drawn(part));
  expect(pinAt({ part: r1!, pin: 2 })).toBe('R1.2');
  expect(pinAt({ part: r1!, pin: null })).toBeNull();
  expect(pinAt({ part: tp1!, pin: null })).toBe('TP1.1');
  expect(pinNamed(' r1.2', [r1!, tp1!])).toBe('R1.2');
  expect(pinNamed('R1.3', [r1!, tp1!])).toBeNull();
  expect(pinNamed('nonsense', [r1!, tp1!])).toBeNull();
});
