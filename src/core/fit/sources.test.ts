import { describe, expect, it } from 'vitest';
import { FitError, filletsOn, fitPart, landSize, mmPerPx, partFromDrawing, patternFromPhoto, placed, type FootDrawing } from './index.ts';

const drawing: FootDrawing = { spanMm: [5.8, 6.2], footMm: [0.4, 1.27], widthMm: [0.31, 0.51] };
const feetOnly = { ...drawing, legMm: null, pegs: null };
const scale = { fromPx: [0, 0], toPx: [300, 400], apartMm: 50 } as const;
const mark = (name: string, xPx: number, yPx: number) => ({ name, kind: 'surface' as const, round: false, xPx, yPx, wPx: 5, hPx: 10 });

describe('a pattern measured on a photo', () => {
  it('is in mm about the middle of the marks, with y up', () => {
    const { pads, numbered } = patternFromPhoto('a place', 'chip', [mark('1', 100, 50), mark('2', 120, 90)], scale);
    expect(numbered).toBe(true);
    expect(pads.map(({ xMm, yMm, wMm, hMm }) => [xMm, yMm, wMm, hMm])).toEqual([
      [-1, 2, 0.5, 1],
      [1, -2, 0.5, 1],
    ]);
  });

  it('does not take marks without names for pins', () => {
    expect(patternFromPhoto('a place', 'chip', [mark('1', 0, 0), mark('', 9, 9)], scale)).toMatchObject({
      numbered: false,
      pads: [{}, { name: '#2' }],
    });
  });

  it('needs a scale that is one, and marks with a size', () => {
    expect(mmPerPx(scale)).toBe(0.1);
    const code = (work: () => unknown): string => {
      try {
        work();
        return 'none';
      } catch (error) {
        return error instanceof FitError ? error.code : 'another';
      }
    };
    expect(code(() => mmPerPx({ ...scale, toPx: [0, 0] }))).toBe('bad-scale');
    expect(code(() => patternFromPhoto('a place', 'chip', [{ ...mark('1', 0, 0), wPx: 0 }], scale))).toBe('bad-size');
    expect(code(() => partFromDrawing({ ...feetOnly, name: 'x', kind: 'gull-wing', sides: 4, pins: 10, pitchMm: 1, heightMm: null }))).toBe(
      'bad-count',
    );
    const eight = { ...feetOnly, name: 'x', kind: 'gull-wing', sides: 2, pins: 8, pitchMm: 1, heightMm: null } as const;
    expect(code(() => partFromDrawing({ ...eight, spanMm: [6, 5] }))).toBe('bad-size');
    expect(code(() => partFromDrawing({ ...eight, legMm: 0 }))).toBe('bad-size');
    expect(code(() => landSize({ ...drawing, footMm: [1, 0.5] }, 'gull-wing-wide', 'least'))).toBe('bad-size');
  });
});

describe('a part from the numbers of its drawing', () => {
  const part = partFromDrawing({ ...feetOnly, name: 'eight feet', kind: 'gull-wing', sides: 2, pins: 8, pitchMm: 1.27, heightMm: 1.75 });
  const at = (pin: string) => part.pads.find(({ name }) => name === pin)!;

  it('counts against the clock from the upper left', () => {
    expect([at('1').xMm < 0, at('1').yMm > 0]).toEqual([true, true]);
    expect(at('1').yMm - at('2').yMm).toBeCloseTo(1.27, 9);
    expect([at('5').xMm > 0, at('5').yMm < 0]).toEqual([true, true]);
    expect(at('8').yMm).toBeCloseTo(at('1').yMm, 9);
  });

  it('has legs that ask for holes with play, and pegs along its first row', () => {
    const pegs = { count: 2, apartMm: 8, inwardMm: 3, sizeMm: 0.9 } as const;
    const socket = partFromDrawing({
      ...feetOnly,
      name: 'socket',
      kind: 'connector',
      sides: 1,
      pins: 3,
      pitchMm: 2,
      spanMm: [4, 4],
      legMm: 0.5,
      pegs,
      heightMm: null,
    });
    const legs = socket.pads.filter(({ kind }) => kind === 'through');
    expect(legs.map(({ name, xMm, yMm, drill }) => [name, xMm, yMm, drill!.wMm])).toEqual([
      ['1', -2, -2, 0.7],
      ['2', 0, -2, 0.7],
      ['3', 2, -2, 0.7],
    ]);
    const holes = socket.pads.filter(({ kind }) => kind === 'peg').map(({ xMm, yMm }) => [xMm, yMm]);
    expect(holes).toEqual([
      [-4, 1],
      [4, 1],
    ]);
    const place = (hole: number, peg: number) => ({
      ...placed(socket, { turnDeg: 90, dxMm: 1, dyMm: 2 }),
      basis: 'lands' as const,
      pads: placed(socket, { turnDeg: 90, dxMm: 1, dyMm: 2 }).pads.map((pad) => {
        const mm = pad.kind === 'peg' ? peg : hole;
        return { ...pad, wMm: mm + 0.5, hMm: mm + 0.5, drill: { wMm: mm, hMm: mm, dxMm: 0, dyMm: 0 } };
      }),
    });
    expect(fitPart(socket, place(0.7, 0.95))).toMatchObject({ answer: 'fits', alignedOn: 'holes', placing: { turnDeg: 90 } });
    expect(fitPart(socket, place(0.45, 0.95)).asks).toContainEqual({ code: 'leg', decides: true, name: '1', mostMm: 0.45 });
    expect(fitPart(socket, place(0.7, 0.5)).reasons).toMatchObject([{ code: 'hole-too-small' }, { code: 'hole-too-small' }]);
  });

  it('has its feet as far out as the drawing says', () => {
    expect(Math.max(...part.pads.map(({ xMm, wMm }) => xMm + wMm / 2))).toBeCloseTo(3, 9);
  });

  it('sits on lands made for it at the level that they were made for', () => {
    const size = landSize(drawing, 'gull-wing-wide', 'nominal');
    const long = (size.outerMm - size.innerMm) / 2;
    const pads = part.pads.map((pad) => ({ ...pad, wMm: long, hMm: size.acrossMm, xMm: (Math.sign(pad.xMm) * (size.innerMm + long)) / 2 }));
    const fit = fitPart(part, placed({ ...part, basis: 'lands', pads }, { turnDeg: 270, dxMm: 4, dyMm: 1 }));
    expect(fit.answer).toBe('fits');
    expect(fit.pads.every(({ level }) => level === 'most' || level === 'nominal')).toBe(true);
    const { toeMm, heelMm, sideMm } = filletsOn(size, drawing);
    for (const { room } of fit.pads) {
      expect(room!.toeMm).toBeCloseTo(toeMm, 9);
      expect(room!.heelMm).toBeCloseTo(heelMm, 9);
      expect(room!.sideMm).toBeCloseTo(sideMm, 9);
    }
  });
});
