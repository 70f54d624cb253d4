import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assertFit, drawFit, fitPart, partFromDrawing, placed, rankFits, PLAIN_PAD, UNKNOWN, type Pad, type Pattern } from './index.ts';

const row = (pins: number, pitchMm: number, size: readonly [number, number] = [0.5, 1.2]): Pad[] =>
  Array.from({ length: pins }, (_, i) => ({ ...PLAIN_PAD, name: String(i + 1), xMm: i * pitchMm, yMm: 0, wMm: size[0], hMm: size[1] }));
const lands = (pads: readonly Pad[], more: Partial<Pattern> = {}): Pattern => ({
  ...UNKNOWN,
  name: 'a part',
  kind: 'gull-wing',
  basis: 'lands',
  numbered: true,
  pads,
  ...more,
});
const peg = (xMm: number, yMm: number, size: number): Pad => ({
  ...PLAIN_PAD,
  name: '',
  kind: 'peg',
  shape: 'circle',
  xMm,
  yMm,
  wMm: size,
  hMm: size,
  drill: { wMm: size, hMm: size, dxMm: 0, dyMm: 0 },
});
/** Not the same when turned: a row of three and one pad above. */
const odd = [...row(3, 1), { ...row(1, 1)[0]!, name: '4', yMm: 3 }];

const feet = (more: Partial<Parameters<typeof partFromDrawing>[0]> = {}): Pattern =>
  partFromDrawing({
    name: 'eight feet',
    kind: 'gull-wing',
    sides: 2,
    pins: 8,
    pitchMm: 1.27,
    spanMm: [5.8, 6.2],
    footMm: [0.6, 1],
    widthMm: [0.31, 0.51],
    heightMm: null,
    legMm: null,
    pegs: null,
    ...more,
  });
/** Lands for those feet with a 0.4 mm toe and a 0.45 mm heel. */
const landsForFeet = (more: Partial<Pattern> = {}): Pattern => {
  const pads = feet().pads.map((pad) => ({ ...pad, wMm: 1.65, hMm: 0.6, xMm: Math.sign(pad.xMm) * 2.575 }));
  return lands(pads, more);
};

describe('a part over a place', () => {
  it('fits where it was turned and moved, and the answer says how', () => {
    const turns = fc.constantFrom(0, 90, 180, 270);
    fc.assert(
      fc.property(
        turns,
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        (turnDeg, dxMm, dyMm) => {
          const part = lands(odd);
          const place = placed(part, { turnDeg, dxMm, dyMm });
          const fit = fitPart(part, place);
          assertFit(part, place, fit);
          expect(fit.answer).toBe('fits');
          expect(fit.placing.turnDeg).toBe(turnDeg);
          expect(fit.placing.dxMm).toBeCloseTo(dxMm, 6);
          expect(fit.placing.dyMm).toBeCloseTo(dyMm, 6);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('is found tilted on a board that was measured tilted', () => {
    const fit = fitPart(lands(odd), placed(lands(odd), { turnDeg: 97, dxMm: 2, dyMm: 1 }));
    expect(fit.answer).toBe('fits');
    expect(fit.placing.turnDeg).toBeCloseTo(97, 6);
  });

  it('is told apart from one of another pitch, of more pins, and of none', () => {
    const codes = (place: Pattern) => fitPart(lands(row(4, 0.8)), place).reasons.map(({ code }) => code);
    expect(codes(lands(row(4, 0.65)))).toEqual(['other-pitch']);
    expect(codes(lands(row(3, 0.8)))).toEqual(['pin-without-pad']);
    expect(codes(lands([]))).toEqual(['no-pads']);
  });

  it('says which pads get nothing when it has fewer pins', () => {
    const fit = fitPart(lands(row(3, 0.8)), lands(row(4, 0.8)));
    expect([fit.answer, fit.unused]).toEqual(['fits', ['4']]);
  });

  it('has the feet measured when lands cover each other only in part, and does not line up when they hardly do', () => {
    const off = (by: number) => row(6, 1).map((pad) => (pad.name === '4' ? { ...pad, yMm: by } : pad));
    expect(fitPart(lands(row(6, 1)), lands(off(0.5)))).toMatchObject({
      answer: 'cannot-say',
      asks: [{ code: 'feet', pins: expect.arrayContaining(['4']) }, { code: 'height' }],
    });
    expect(fitPart(lands(row(6, 1)), lands(off(2)))).toMatchObject({
      answer: 'does-not-line-up',
      reasons: expect.arrayContaining([expect.objectContaining({ code: 'pad-off', pins: ['4'] })]),
    });
  });

  it('tells another order of pins from another shape', () => {
    const swapped = odd.map((pad) => ({ ...pad, name: { 1: '2', 2: '1' }[pad.name] ?? pad.name }));
    expect(fitPart(lands(odd), lands(swapped)).reasons).toEqual([
      {
        code: 'pin-order',
        pairs: [
          ['1', '2'],
          ['2', '1'],
        ],
      },
    ]);
    const other = odd.map((pad) => ({ ...pad, xMm: -pad.xMm }));
    expect(fitPart(lands(odd), lands(other)).reasons).toEqual([{ code: 'other-side' }]);
  });

  it('counts pads of one net as one', () => {
    const split = [...row(1, 1, [0.3, 1]), { ...row(1, 1, [0.3, 1])[0]!, name: '9', xMm: 0.3 }, ...row(3, 1).slice(1)];
    const whole = [{ ...row(1, 1, [0.6, 1])[0]!, xMm: 0.15 }, { ...row(1, 1, [0.6, 1])[0]!, name: '9', xMm: 0.15 }, ...row(3, 1).slice(1)];
    const fit = fitPart(lands(whole), lands(split));
    expect(fit.answer).toBe('fits');
    expect(fit.pads[0]).toMatchObject({ pins: ['1', '9'], onto: ['1', '9'], overlap: expect.closeTo(1, 6) });
  });

  it('takes copper that is split in two, or measured a little too near, for no other pitch', () => {
    const part = lands([...row(3, 1, [0.6, 1]), { ...row(1, 1, [0.6, 1])[0]!, name: '9' }], { kind: 'connector' });
    const halves = [
      { ...row(1, 1, [0.29, 1])[0]!, xMm: -0.155 },
      { ...row(1, 1, [0.29, 1])[0]!, name: '9', xMm: 0.155 },
    ];
    expect(fitPart(part, lands([...halves, ...row(3, 1, [0.6, 1]).slice(1)], { kind: 'connector' })).reasons).toEqual([]);
    const near = row(8, 0.5, [0.3, 1]).map((pad) => (pad.name === '4' ? { ...pad, xMm: pad.xMm + 0.06 } : pad));
    expect(fitPart(lands(row(8, 0.5, [0.3, 1])), lands(near)).reasons).toEqual([]);
  });

  it('says when the same pins are for something else', () => {
    const fit = fitPart(lands(odd, { nets: { 1: 'IN', 2: 'GND' } }), lands(odd, { nets: { 1: 'GND', 2: 'gnd' } }));
    expect(fit.reasons).toContainEqual({ code: 'other-use', pins: ['1'] });
  });

  it('asks for pin 1 where names say nothing', () => {
    const fit = fitPart(
      lands(odd),
      lands(
        odd.map((pad) => ({ ...pad, name: `#${pad.name}` })),
        { numbered: false },
      ),
    );
    expect(fit).toMatchObject({ answer: 'cannot-say', reasons: [], asks: [{ code: 'pin-1', decides: true }, { code: 'height' }] });
  });
});

describe('pegs and legs', () => {
  const withPegs = (size: number, x = 0.5) => lands([...odd, peg(x, 1.5, size), peg(x + 1, 1.5, size)], { kind: 'connector' });

  it('find their holes first', () => {
    expect(fitPart(withPegs(0.8), withPegs(0.8)).alignedOn).toBe('holes');
    expect(fitPart(withPegs(0.8), lands(odd)).reasons.map(({ code }) => code)).toEqual(['hole-missing', 'hole-missing']);
  });

  it('go into larger holes; of a smaller one the peg has to be measured, and into a far smaller one it does not go', () => {
    expect(fitPart(withPegs(0.8), withPegs(1)).answer).toBe('fits');
    expect(fitPart(withPegs(1), withPegs(0.9)).asks).toContainEqual({ code: 'peg', decides: true, name: '', mostMm: 0.9 });
    expect(fitPart(withPegs(1), withPegs(0.6)).reasons[0]).toMatchObject({ code: 'hole-too-small' });
  });
});

describe('feet on lands', () => {
  it('get the fillets of the level that they reach', () => {
    const fit = fitPart(feet(), landsForFeet());
    assertFit(feet(), landsForFeet(), fit);
    expect(fit.answer).toBe('fits');
    for (const { room, level } of fit.pads) {
      expect(room!.toeMm).toBeCloseTo(0.4, 6);
      expect(room!.heelMm).toBeCloseTo(0.45, 6);
      expect(room!.sideMm).toBeCloseTo(0.095, 6);
      expect(level).toBe('nominal');
    }
  });

  it('are bent a little, and not far', () => {
    const wider = (by: number) => lands(landsForFeet().pads.map((pad) => ({ ...pad, xMm: pad.xMm + Math.sign(pad.xMm) * by })));
    const near = fitPart(feet(), wider(0.6));
    assertFit(feet(), wider(0.6), near);
    expect(near.answer).toBe('fits-after-bending');
    expect(near.bendMm).toBeCloseTo(0.6 - 0.45 - 0.08, 6);
    expect(fitPart(feet(), wider(1.2)).answer).toBe('does-not-line-up');
  });
});

describe('what pads do not say', () => {
  const socket = (more: Partial<Pattern>) => lands(odd, { kind: 'ribbon-socket', ...more });
  const known = { heightMm: 2, contacts: 'top', mouth: { facesDeg: 90, reachMm: 3 } } as const;

  it('is asked for, and the side of contact decides', () => {
    expect(fitPart(socket({}), socket({}))).toMatchObject({
      answer: 'cannot-say',
      asks: [{ code: 'height' }, { code: 'mouth' }, { code: 'contacts', of: 'both' }],
    });
    expect(fitPart(socket(known), socket(known))).toMatchObject({ answer: 'fits', asks: [] });
  });

  it('speaks against it when it is known to differ', () => {
    const codes = (more: Partial<Pattern>) => fitPart(socket({ ...known, ...more }), socket(known)).reasons.map(({ code }) => code);
    expect(codes({ heightMm: 2.5 })).toEqual(['too-high']);
    expect(codes({ contacts: 'bottom' })).toEqual(['contacts-other-side']);
    expect(codes({ mouth: { facesDeg: 270, reachMm: 3 } })).toEqual(['mouth-turned']);
    expect(codes({ mouth: { facesDeg: 90, reachMm: 4 } })).toEqual(['mouth-off']);
  });

  it('turns with the part', () => {
    const place = placed(socket(known), { turnDeg: 90, dxMm: 5, dyMm: 7 });
    expect(fitPart(socket(known), place)).toMatchObject({ answer: 'fits', placing: { turnDeg: 90 } });
  });
});

describe('which of these fit here', () => {
  const parts = [
    { id: 'other pitch', pattern: lands(row(4, 0.65)) },
    { id: 'doubtful', pattern: lands(row(4, 0.8, [0.5, 0.7]).map((pad, i) => ({ ...pad, yMm: i === 1 ? 0.5 : 0 }))) },
    { id: 'same', pattern: lands(row(4, 0.8)) },
  ];

  it('puts the best first', () => {
    const { done, fits } = rankFits(lands(row(4, 0.8)), parts);
    expect(done).toBe(true);
    expect(fits.map(({ part }) => part.id)).toEqual(['same', 'doubtful', 'other pitch']);
  });

  it('stops when told to and says so', () => {
    let left = 1;
    const { done, fits } = rankFits(lands(row(4, 0.8)), parts, () => left-- === 0);
    expect([done, fits.length]).toEqual([false, 1]);
  });
});

it('is drawn to scale with every pin named, and names cannot break the picture', () => {
  const part = lands([...row(2, 2), { ...row(1, 2)[0]!, name: '<b>"&', yMm: 4 }]);
  const svg = drawFit(part, part, fitPart(part, part), 'part & place');
  expect(svg).toContain('aria-label="part &amp; place"');
  expect(svg).toContain('&lt;b&gt;&quot;&amp;');
  expect(svg).not.toContain('<b>');
  expect(svg).toContain('width="4.5mm"');
  const pegged = lands([...row(2, 2), peg(9, 0, 1)]);
  expect(drawFit(pegged, pegged, fitPart(pegged, pegged), 'a peg far out')).toContain('width="11.75mm"');
});
