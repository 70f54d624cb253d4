import { describe, expect, it } from 'vitest';
import type { Tone } from '../../core/rework/index.ts';
import type { DisplayFound } from '../../core/vision/index.ts';
import { colourTest, coloursTest, displayTest, referenceColour, referenceTone, soundTest } from './index.ts';

const tone = (changes: Partial<Tone> = {}): Tone => ({
  hertz: 1000,
  levelDb: -12,
  thd: 0.01,
  thdDb: -40,
  thdNoiseDb: -38,
  harmonics: [],
  clipped: false,
  ...changes,
});
const reference = referenceTone(soundTest(tone(), null, true).values)!;

describe('a sound check', () => {
  it('of a known-good unit gives the reference of its model back', () => {
    expect(reference).toEqual({ levelDb: -12, hertz: 1000, thd: 0.01, clipped: false });
    expect(referenceTone([{ name: 'Level', value: 1, unit: 'dB' }])).toBeNull();
  });

  it('is judged against that reference by the scale of grades', () => {
    expect(soundTest(tone({ levelDb: -13 }), reference, false)).toMatchObject({
      verdict: 'good',
      text: expect.stringContaining('1 dB quieter'),
    });
    expect(soundTest(tone({ levelDb: -18 }), reference, false).verdict).toBe('suspect');
    expect(soundTest(tone({ thd: 0.2 }), reference, false)).toMatchObject({
      verdict: 'bad',
      values: expect.arrayContaining([expect.objectContaining({ criterion: 'distortion', value: 19 })]),
    });
    expect(soundTest(tone({ hertz: 1040 }), reference, false).verdict).toBe('suspect');
    expect(soundTest(tone({ levelDb: -6 }), reference, false).text).toContain('6 dB louder');
  });

  it('says nothing of a unit without a reference, or from a recording that was too loud', () => {
    expect(soundTest(tone(), null, false).verdict).toBe('not-known');
    expect(soundTest(tone({ clipped: true }), reference, false)).toMatchObject({
      verdict: 'not-known',
      text: expect.stringContaining('too loud'),
    });
  });
});

describe('a display check', () => {
  const found = (changes: Partial<DisplayFound>): DisplayFound => ({
    ok: true,
    corners: [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
    dots: [],
    lines: [],
    stains: [],
    darkestPercent: 10,
    ...changes,
  });

  it('counts what shows on several photos once, and a line as twenty dots', () => {
    const dot = { x: 0.3, y: 0.3, w: 0.01, h: 0.01, count: 1 };
    const said = displayTest([
      { shows: 'white', found: found({ dots: [dot, { ...dot, x: 0.9, count: 2 }] }) },
      { shows: 'red', found: found({ dots: [{ ...dot, x: 0.305 }], lines: [{ across: true, at: 0.5 }], darkestPercent: 60 }) },
    ]);
    expect(said.values).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ criterion: 'picture', value: 23 }),
        expect.objectContaining({ criterion: 'light', value: 10 }),
      ]),
    );
    expect(said.text).toContain('3 odd dots, 1 line, 0 stains');
    expect(said.verdict).toBe('bad');
  });

  it('is good with none, and says nothing of the light without a white picture', () => {
    expect(displayTest([{ shows: 'white', found: found({}) }]).verdict).toBe('good');
    expect(
      displayTest([{ shows: 'black', found: found({ darkestPercent: null }) }]).values.map(({ criterion }) => criterion),
    ).not.toContain('light');
  });
});

describe('the colours of several places of a shell', () => {
  const [grey, faded] = [
    { L: 60, a: 0, b: 0 },
    { L: 58, a: 2, b: 14 },
  ];

  it('are judged by the worst place, with the difference of each', () => {
    const said = coloursTest([{ ...grey, L: 60.5 }, faded, grey], grey, false);
    expect(said.text).toMatch(/^Worst at place 2 of 3: ΔE00 .* yellower by 14/);
    expect(said.verdict).toBe(colourTest(faded, grey, false).verdict);
    expect(said.values.filter(({ name }) => name.startsWith('Place')).map(({ value }) => value)).toEqual([
      expect.closeTo(0.4, 0),
      said.values.find(({ criterion }) => criterion === 'colour')!.value,
      0,
    ]);
  });

  it('say how uneven the shell is where no unfaded one is known, and are as one place where there is one', () => {
    expect(coloursTest([grey, faded], null, false)).toMatchObject({
      verdict: 'not-known',
      text: expect.stringMatching(/differ by up to ΔE00 1\d/),
    });
    expect(coloursTest([faded], grey, false)).toEqual(colourTest(faded, grey, false));
    expect(coloursTest([grey, faded], null, true)).toEqual(colourTest(grey, null, true));
  });
});

describe('the colour of a shell', () => {
  const grey = { L: 60, a: 0, b: 2 };

  it('is compared with an unfaded one of its model, and says which way it went', () => {
    const unfaded = referenceColour(colourTest(grey, null, true).values)!;
    expect(unfaded).toEqual(grey);
    const faded = colourTest({ L: 58, a: 2, b: 14 }, unfaded, false);
    expect(faded.text).toMatch(/^ΔE00 \d+(\.\d)? from an unfaded shell, yellower by 12\.0 of b\*\.$/);
    expect(faded).toMatchObject({ verdict: 'suspect', values: expect.arrayContaining([expect.objectContaining({ criterion: 'colour' })]) });
    expect(colourTest({ ...grey, L: 60.5 }, unfaded, false)).toMatchObject({
      verdict: 'good',
      text: expect.not.stringContaining('yellower'),
    });
  });

  it('says nothing where none was measured', () => {
    expect(colourTest(grey, null, false).verdict).toBe('not-known');
    expect(referenceColour([{ name: 'L*', value: 60, unit: '' }])).toBeNull();
  });
});
