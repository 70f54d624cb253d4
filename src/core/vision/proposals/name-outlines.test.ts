import { expect, it } from 'vitest';
import type { Patch } from '../colour/white-balance.ts';
import { referencesBeside, type ReadWord } from './name-outlines.ts';
import type { ProposedOutline } from './propose-outlines.ts';

const box = (left: number, top: number, w: number, h: number): Patch => ({ left, top, right: left + w, bottom: top + h });
const part = (patch: Patch, kind: ProposedOutline['kind'] = 'part'): ProposedOutline => ({
  kind,
  box: patch,
  outline: [
    [patch.left, patch.top],
    [patch.right, patch.top],
    [patch.right, patch.bottom],
    [patch.left, patch.bottom],
  ],
  chance: 0.9,
  rows: [],
});
const word = (text: string, patch: Patch, sure = 0.9): ReadWord => ({ text, box: patch, sure });

it('names each part by the nearest print beside it, each reference once', () => {
  const outlines = [part(box(0, 0, 30, 12)), part(box(60, 0, 30, 12)), part(box(0, 60, 80, 80))];
  const words = [word('R1', box(2, 14, 20, 8)), word('R2', box(95, 2, 20, 8)), word('U7', box(20, 145, 20, 10))];
  expect(referencesBeside(outlines, words, 10)).toEqual(['R1', 'R2', 'U7']);
});

it('takes no name from what a part says of itself, from words that are none, from afar, or that were hardly read', () => {
  const outlines = [part(box(0, 0, 100, 100)), part(box(200, 0, 30, 12)), part(box(300, 0, 30, 30), 'hole')];
  const words = [
    word('TN16', box(30, 30, 40, 20)),
    word('RESET', box(0, 102, 50, 10)),
    word('R9', box(200, 60, 20, 8)),
    word('R8', box(202, 14, 20, 8), 0.6),
    word('H1', box(302, 32, 20, 8)),
  ];
  expect(referencesBeside(outlines, words, 10)).toEqual([null, null, null]);
});
