import { expect, it } from 'vitest';
import { fitPart, partFromDrawing } from '../../core/fit/index.ts';
import { chipReadings, wantedPads } from './index.ts';

const soic8 = {
  name: 'eight feet',
  kind: 'gull-wing',
  sides: 2,
  pins: 8,
  pitchMm: 1.27,
  spanMm: [5.8, 6.2],
  footMm: [0.4, 1.27],
  widthMm: [0.31, 0.51],
  heightMm: null,
  legMm: null,
  pegs: null,
} as const;

it('tells the pads that feet want, as published for eight of them', () => {
  expect(wantedPads(soic8)).toBe('By IPC-7351B, level B, these feet want pads 6.90 mm over all, 3.00 mm between them, 0.60 mm wide.');
});

it('tells none for legs, for kinds without goals, and for numbers that make none', () => {
  expect(wantedPads({ ...soic8, legMm: 0.5 })).toBeNull();
  expect(wantedPads({ ...soic8, kind: 'connector' })).toBeNull();
  expect(wantedPads({ ...soic8, footMm: [1.27, 0.4] })).toBeNull();
  expect(wantedPads({ ...soic8, footMm: [3, 4] })).toBeNull();
});

it('tells every meaning of a code, and parts of them that fit on pads as they want', () => {
  expect(chipReadings('0603').map(({ label }) => label)).toEqual([
    '0.6 × 0.3 mm, in inches 0201, metric 0603',
    '1.6 × 0.8 mm, in inches 0603, metric 1608',
  ]);
  expect(chipReadings('nothing')).toEqual([]);
  const part = partFromDrawing({ ...soic8, name: '1608', ...chipReadings('1608')[0]!.drawing });
  expect(wantedPads({ ...soic8, ...chipReadings('1608')[0]!.drawing })).toMatch(/^By IPC/);
  const place = {
    ...part,
    basis: 'lands' as const,
    pads: part.pads.map((pad) => ({ ...pad, wMm: 0.9, hMm: 0.95, xMm: Math.sign(pad.xMm) * 0.75 })),
  };
  expect(fitPart(part, place).answer).toBe('fits');
});
