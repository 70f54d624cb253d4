import { describe, expect, it } from 'vitest';
import { layoutMat, PAPERS, type Mat, type MatFastener, type MatPanel, type MatShape } from './layout-mat.ts';

const back: MatPanel = { id: 'back', name: 'Back', widthMm: 90, heightMm: 60 };
const screws: MatFastener = {
  id: 'back-screws',
  name: 'Screws of the back',
  drive: 'Cross 00',
  lengthMm: 8,
  count: 3,
  panel: 'back',
  places: [
    [5, 5],
    [85, 5],
  ],
};

const shapes = (mat: Mat): MatShape[] => (mat.ok ? mat.pages.flatMap((page) => [...page.shapes]) : []);
const circles = (mat: Mat, what: 'place' | 'tray') => shapes(mat).filter((shape) => shape.kind === 'circle' && shape.what === what);

describe('the mat', () => {
  it('keeps the distances of the panel, and gives what has no place a tray', () => {
    const mat = layoutMat('TN-20', [back], [screws], 'A4');
    const [left, right] = circles(mat, 'place') as { x: number; y: number }[];
    expect(Math.hypot(right!.x - left!.x, right!.y - left!.y)).toBeCloseTo(80, 9);
    expect(circles(mat, 'tray')).toHaveLength(1);
  });

  it('draws 100 mm across and down', () => {
    const rulers = shapes(layoutMat('TN-20', [back], [screws], 'Letter')).filter((s) => s.kind === 'line' && s.what === 'ruler');
    const lengths = rulers.map((s) => s.kind === 'line' && Math.hypot(s.x2 - s.x1, s.y2 - s.y1));
    expect(lengths).toEqual([100, 100]);
  });

  it.each(['A4', 'Letter'] as const)('stays on the paper: %s', (paper) => {
    const many = Array.from({ length: 30 }, (_, i): MatFastener => ({ ...screws, id: `s${i}`, count: 40, panel: 'none', places: [] }));
    const mat = layoutMat('TN-20', [back], [screws, ...many], paper);
    const { width, height } = PAPERS[paper];
    if (!mat.ok) throw new Error(mat.code);
    expect(mat.pages.length).toBeGreaterThan(1);
    const points = shapes(mat).flatMap((s): number[][] =>
      s.kind === 'circle'
        ? [
            [s.x - s.r, s.y - s.r],
            [s.x + s.r, s.y + s.r],
          ]
        : s.kind === 'line'
          ? [
              [s.x1, s.y1],
              [s.x2, s.y2],
            ]
          : [[s.x, s.y]],
    );
    for (const [x, y] of points) {
      expect(x! >= 5 && x! <= width - 5).toBe(true);
      expect(y! >= 5 && y! <= height - 5).toBe(true);
    }
  });

  it('lays a panel on its side where it only fits so, keeping its distances', () => {
    const wide: MatPanel = { ...back, widthMm: 225, heightMm: 100 };
    const set: MatFastener = {
      ...screws,
      places: [
        [10, 20],
        [215, 20],
      ],
      count: 2,
    };
    const [a, b] = circles(layoutMat('x', [wide], [set], 'A4'), 'place') as { x: number; y: number }[];
    expect(Math.abs(a!.x - b!.x)).toBeCloseTo(0, 9);
    expect(Math.abs(a!.y - b!.y)).toBeCloseTo(205, 9);
  });

  it('refuses a panel that no page takes at true scale', () => {
    const huge = { ...back, widthMm: 300, heightMm: 250 };
    expect(layoutMat('x', [huge], [screws], 'A4')).toMatchObject({ ok: false, code: 'panel-too-large', panel: 'back' });
  });
});
