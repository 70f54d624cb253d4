import { packageNamed, packageNames } from '../../../bench/models/packages.ts';
import type { Place } from '../board/frame.ts';
import { nextRef, rounded, splitRef, type EditorPart, type Side } from './editor-part.ts';
import { placedTogether, tapped, withBrush, type Editor } from './editor.ts';
import { kindOf, PART_KINDS } from './part-kinds.ts';

/** Something that the photo of a side seems to show: to accept, correct or wave away. Places on the board, mm. */
export interface Ghost {
  readonly kind: 'part' | 'pin-row' | 'test-point' | 'hole';
  readonly chance: number;
  /** What seems to be printed beside it. */
  readonly reference: string | null;
  readonly side: Side;
  readonly outline: readonly Place[];
  /** Rows of pins in it, longest first. */
  readonly rows: readonly (readonly Place[])[];
}

/** Sizes that differ by more than this factor are not those of the same package. */
const ALIKE = 1.4;

const range = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];

/** Middle and size of a ghost along the board, mm. */
export function boxOf({ outline }: Ghost): { readonly x: number; readonly y: number; readonly w: number; readonly h: number } {
  const [left, right] = range(outline.map(({ x }) => x));
  const [bottom, top] = range(outline.map(({ y }) => y));
  return { x: (left + right) / 2, y: (bottom + top) / 2, w: right - left, h: top - bottom };
}

/** The likeliest ghost at a place of a side that no marked part covers; null where there is none. */
export function ghostAt(ghosts: readonly Ghost[], side: Side, at: Place): Ghost | null {
  const here = ghosts.filter((ghost) => {
    const { x, y, w, h } = boxOf(ghost);
    return ghost.side === side && Math.abs(at.x - x) <= w / 2 && Math.abs(at.y - y) <= h / 2;
  });
  return here.toSorted((a, b) => b.chance - a.chance)[0] ?? null;
}

/** A click where ghosts are shown: the part in the hand goes to the middle of the ghost, turned as it lies; the tool Select waves the ghost away. */
export function tappedWithGhosts(
  editor: Editor,
  ghosts: readonly Ghost[],
  at: Place,
  reach: number,
  adds: boolean,
): { readonly editor: Editor; readonly ghosts: readonly Ghost[] } {
  const ghost = ghostAt(ghosts, editor.side, at);
  const others = ghosts.filter((each) => each !== ghost);
  if (ghost && editor.brush.tool === 'place') {
    const { letters, package: name, rotation, number } = editor.brush;
    const printed = printedOn(ghost, letters, editor.parts);
    const turned = { ...editor, brush: { ...editor.brush, rotation: rotationOn(ghost, name, rotation), number: printed ?? number } };
    const next = tapped(turned, boxOf(ghost), reach, adds);
    return next.parts === editor.parts
      ? { editor: next, ghosts }
      : { editor: { ...next, brush: { ...next.brush, rotation: editor.brush.rotation } }, ghosts: others };
  }
  const next = tapped(editor, at, reach, adds);
  const isWaved = ghost !== null && editor.brush.tool === 'select' && next.selected.size === 0;
  return { editor: next, ghosts: isWaved ? others : ghosts };
}

/** The number of the reference that is printed beside a ghost, if it has these letters and no part has it yet. */
function printedOn({ reference }: Ghost, letters: string, taken: { has(ref: string): boolean }): number | null {
  const read = reference === null || taken.has(reference) ? null : splitRef(reference);
  return read?.letters === letters ? read.number : null;
}

/** The package as it must lie to cover the ghost: turned by a quarter where its long side is the other one. */
function rotationOn(ghost: Ghost, name: string, rotation: number): number {
  const court = packageNamed(name)?.court;
  const { w, h } = boxOf(ghost);
  if (!court || court.w === court.h || w === h) return rotation;
  const lies = rotation % 180 === 0 ? court.w > court.h : court.h > court.w;
  return lies === w > h ? rotation : (rotation + 90) % 360;
}

/** How far the size of a ghost is from that of a package either way round, as a factor from 1 up. */
function unlike(ghost: Ghost, name: string): number {
  const court = packageNamed(name)?.court;
  if (!court) return Infinity;
  const { w, h } = boxOf(ghost);
  const factor = (a: number, b: number): number => Math.max(a / b, b / a);
  return Math.max(factor(Math.max(w, h), Math.max(court.w, court.h)), factor(Math.min(w, h), Math.min(court.w, court.h)));
}

/** A part of the size of the one in the hand; one beside which other letters are printed is not. */
export const isLikeInHand = (ghost: Ghost, { brush }: Pick<Editor, 'brush'>): boolean =>
  ghost.kind === 'part' && unlike(ghost, brush.package) <= ALIKE && (lettersBeside(ghost) ?? brush.letters) === brush.letters;

const lettersBeside = ({ reference }: Ghost): string | null => (reference === null ? null : (splitRef(reference)?.letters ?? null));

/** A ghost as a part: as the one in the hand where it has its size, else in the package that is most like it; pins where only those are known. */
function accepted(ghost: Ghost, editor: Editor, taken: ReadonlySet<string>): EditorPart {
  const { x, y } = boxOf(ghost);
  const at = { side: ghost.side, x: rounded(x), y: rounded(y), block: editor.brush.block };
  const plain = { value: '', rotation: 0, pins: [] };
  const refWith = (letters: string, from: number): string => nextRef(taken, letters, printedOn(ghost, letters, taken) ?? from);
  const named = (kind: string) => ({ kind, ref: refWith(kindOf(kind).letters, 1) });
  if (ghost.kind === 'test-point' || ghost.kind === 'hole') return { ...named(ghost.kind), ...plain, package: 'TP', ...at };
  const [row] = ghost.rows;
  if (ghost.kind === 'pin-row' && row)
    return { ...named('connector'), ...plain, package: '', ...at, pins: row.map((pin) => [rounded(pin.x), rounded(pin.y)] as const) };
  const { letters, kind, value, package: own, rotation, number } = editor.brush;
  if (isLikeInHand(ghost, editor))
    return {
      kind,
      ref: refWith(letters, number ?? 1),
      value,
      package: own,
      rotation: rotationOn(ghost, own, rotation),
      pins: [],
      ...at,
    };
  const name = likeliest(ghost);
  const printed = PART_KINDS.find((each) => each.letters === lettersBeside(ghost));
  const found = printed ?? PART_KINDS.find(({ packages }) => packages.includes(name)) ?? kindOf('other');
  return { ...named(found.id), ...plain, package: name, rotation: rotationOn(ghost, name, 0), ...at };
}

const FIXED_NAMES = packageNames().filter((name) => !name.endsWith('-n'));
const likeliest = (ghost: Ghost): string => FIXED_NAMES.reduce((best, name) => (unlike(ghost, name) < unlike(ghost, best) ? name : best));

/** Many ghosts accepted as one step that can be taken back; they get the next free references. */
export function acceptedAll(editor: Editor, ghosts: readonly Ghost[]): Editor {
  const taken = new Set(editor.parts.keys());
  const parts = ghosts.toSorted(byPlace).map((ghost) => {
    const part = accepted(ghost, editor, taken);
    taken.add(part.ref);
    return part;
  });
  return placedTogether(editor, parts);
}

/** From the top down, and from the left to the right. */
const byPlace = (a: Ghost, b: Ghost): number => boxOf(b).y - boxOf(a).y || boxOf(a).x - boxOf(b).x;

/** Ghosts that nothing marked covers yet. */
export function uncovered(ghosts: readonly Ghost[], editor: Editor): readonly Ghost[] {
  const select = withBrush(editor, { tool: 'select' });
  return ghosts.filter((ghost) => tapped({ ...select, side: ghost.side }, boxOf(ghost)).selected.size === 0);
}
