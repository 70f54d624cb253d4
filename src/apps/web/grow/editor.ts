import { packageNamed } from '../../../bench/models/packages.ts';
import { hitAt } from '../board/drawn-part.ts';
import type { Place } from '../board/frame.ts';
import { drawn, nextRef, rounded, shifted, splitRef, turnedPart, type EditorPart, type Side } from './editor-part.ts';
import { kindOf } from './part-kinds.ts';
import { gridOfPins, rowOfPins, type GridShape } from './pin-patterns.ts';

/** What a click does: places a part, begins or ends a row or a grid of pins, or selects. */
export type EditorTool = 'place' | 'row' | 'grid' | 'select';

/** What the next part will be. It stays as it is until it is changed. */
export interface Look {
  readonly kind: string;
  /** Letters that its references begin with. */
  readonly letters: string;
  readonly value: string;
  readonly package: string;
  readonly rotation: number;
  readonly block: string;
}

export interface Brush extends Look {
  readonly tool: EditorTool;
  /** Number of the next reference where a person says it; null counts on from the last one placed. */
  readonly number: number | null;
  readonly pins: number;
  readonly grid: GridShape;
}

/** One step that can be taken back: what the parts were before and are after. */
export interface Change {
  readonly id: number;
  readonly said: string;
  readonly before: readonly EditorPart[];
  readonly after: readonly EditorPart[];
}

/** A board under the hand of a person. Every function below gives the next one and leaves this one as it is. */
export interface Editor {
  readonly parts: ReadonlyMap<string, EditorPart>;
  readonly side: Side;
  readonly brush: Brush;
  /** The first click of a row or a grid, waiting for the second. */
  readonly pending: Place | null;
  readonly selected: ReadonlySet<string>;
  readonly clipboard: readonly EditorPart[];
  /** Looks that were used, the latest first. */
  readonly recent: readonly Look[];
  readonly past: readonly Change[];
  readonly future: readonly Change[];
  readonly nextChange: number;
}

/** So many looks that were used are kept within one click. */
export const MOST_RECENT = 9;
/** Copies are pasted so far from what was copied, mm. */
export const PASTE_SHIFT: Place = { x: 2, y: -2 };
export const MOST_PINS = 200;

const FIRST_BRUSH: Brush = {
  kind: 'resistor',
  letters: 'R',
  value: '',
  package: '0603',
  rotation: 0,
  block: '',
  tool: 'place',
  number: null,
  pins: 4,
  grid: { columns: 4, rows: 2, counting: 'around' },
};

export const beginEditor = (parts: readonly EditorPart[], side: Side = 'front'): Editor => ({
  parts: new Map(parts.map((part) => [part.ref, part])),
  side,
  brush: FIRST_BRUSH,
  pending: null,
  selected: new Set(),
  clipboard: [],
  recent: [],
  past: [],
  future: [],
  nextChange: 1,
});

/** The brush changed. Another kind comes as it was placed last, else in its usual package. */
export function withBrush(editor: Editor, change: Partial<Brush>): Editor {
  const { kind } = change;
  const look = kind === undefined || kind === editor.brush.kind ? {} : { ...lastLook(editor, kind), number: null };
  return { ...editor, brush: { ...editor.brush, ...look, ...change }, pending: null };
}

function lastLook({ parts, brush }: Editor, kind: string): Look {
  const { letters, packages } = kindOf(kind);
  const last = [...parts.values()].findLast((part) => part.kind === kind && part.package !== '');
  if (!last) return { kind, letters, package: packages[0]!, value: '', rotation: 0, block: brush.block };
  return {
    kind,
    letters: splitRef(last.ref)?.letters ?? letters,
    package: last.package,
    value: last.value,
    rotation: last.rotation,
    block: last.block,
  };
}

export const turnedOver = (editor: Editor): Editor => ({
  ...editor,
  side: editor.side === 'front' ? 'back' : 'front',
  pending: null,
  selected: new Set(),
});

/** The reference that the next part will get: the number that was said, or the one after the last placed with these letters, or the next that is free. */
export function upcomingRef({ brush: { letters, number }, parts, past }: Editor): string {
  const last = past.flatMap(({ after }) => after).findLast(({ ref }) => splitRef(ref)?.letters === letters);
  return nextRef(parts, letters, number ?? (last ? splitRef(last.ref)!.number + 1 : 1));
}

/** Letters and number said in one go, such as C12; what is no reference changes nothing. */
export function withRef(editor: Editor, text: string): Editor {
  const said = splitRef(text);
  return said ? withBrush(editor, said) : editor;
}

/** What a click at a place of the board does with the tool in the hand; `reach` is the thickness of the finger there, mm. */
export function tapped(editor: Editor, at: Place, reach = 0, adds = false): Editor {
  const { tool } = editor.brush;
  const shown = [...editor.parts.values()].map((part) => drawn(part));
  const hit = hitAt(shown, editor.side, at, tool === 'select' ? reach : 0);
  if (tool === 'select') return withSelection(editor, hit?.part.ref ?? null, adds);
  if (tool === 'place') return hit ? withSelection(editor, hit.part.ref, adds) : placedAt(editor, at, []);
  if (editor.pending === null) return { ...editor, pending: at };
  const { pins, grid } = editor.brush;
  const marked = tool === 'row' ? rowOfPins(editor.pending, at, pins) : gridOfPins(editor.pending, at, grid);
  return placedAt({ ...editor, pending: null }, { x: (editor.pending.x + at.x) / 2, y: (editor.pending.y + at.y) / 2 }, marked);
}

function placedAt(editor: Editor, at: Place, pins: EditorPart['pins']): Editor {
  const { kind, value, rotation, block, package: named } = editor.brush;
  const part: EditorPart = {
    ref: upcomingRef(editor),
    kind,
    value,
    package: pins.length > 0 ? '' : named,
    side: editor.side,
    x: rounded(at.x),
    y: rounded(at.y),
    rotation: pins.length > 0 ? 0 : rotation,
    block,
    pins: pins.map(([x, y]) => [rounded(x), rounded(y)] as const),
  };
  const next = changed(editor, `${part.ref} placed`, [], [part]);
  return { ...next, selected: new Set(), recent: used(editor), brush: { ...editor.brush, number: null } };
}

/** The look in the hand goes to the front of those used. */
function used({ recent, brush }: Editor): readonly Look[] {
  const { kind, letters, value, package: named, rotation, block } = brush;
  const look: Look = { kind, letters, value, package: named, rotation, block };
  return [look, ...recent.filter((each) => !isSameLook(each, look))].slice(0, MOST_RECENT);
}

export const isSameLook = (a: Look, b: Look): boolean =>
  a.kind === b.kind &&
  a.letters === b.letters &&
  a.value === b.value &&
  a.package === b.package &&
  a.rotation === b.rotation &&
  a.block === b.block;

/** One of the looks that were used, in the hand again; what is placed next counts on. */
export const withLook = (editor: Editor, look: Look): Editor => ({
  ...editor,
  brush: { ...editor.brush, ...look, tool: 'place', number: null },
  pending: null,
});

/** The part selected alone, or added to and taken out of the selection; null selects nothing. */
export function withSelection(editor: Editor, ref: string | null, adds = false): Editor {
  if (ref === null) return adds ? editor : { ...editor, selected: new Set() };
  if (!adds) return { ...editor, selected: new Set([ref]) };
  const selected = new Set(editor.selected);
  if (!selected.delete(ref)) selected.add(ref);
  return { ...editor, selected };
}

export const withAllSelected = (editor: Editor): Editor => ({
  ...editor,
  selected: new Set([...editor.parts.values()].flatMap(({ ref, side }) => (side === editor.side ? [ref] : []))),
});

export const selectedParts = ({ parts, selected }: Editor): EditorPart[] => [...parts.values()].filter(({ ref }) => selected.has(ref));

/** The selected parts moved by mm; nothing where nothing is selected or the move is none. */
export function movedBy(editor: Editor, by: Place): Editor {
  if (by.x === 0 && by.y === 0) return editor;
  return onSelected(editor, 'moved', (part) => shifted(part, by));
}

/** The selected parts turned a quarter against the clock, each about its middle; with none selected, the brush is. */
export function turnedQuarter(editor: Editor): Editor {
  if (editor.selected.size > 0) return onSelected(editor, 'turned', (part) => turnedPart(part, 90));
  return withBrush(editor, { rotation: (editor.brush.rotation + 90) % 360 });
}

export function removed(editor: Editor): Editor {
  const parts = selectedParts(editor);
  if (parts.length === 0) return editor;
  return { ...changed(editor, `${namesOf(parts)} taken away`, parts, []), selected: new Set() };
}

/** What the selected parts are, changed. A reference can be given to one part alone, and only one that is free. */
export function rewritten(
  editor: Editor,
  facts: Partial<Pick<EditorPart, 'ref' | 'kind' | 'value' | 'package' | 'block' | 'side'>>,
): Editor {
  const ref = facts.ref?.trim();
  if (ref !== undefined && (editor.selected.size !== 1 || splitRef(ref) === null || editor.parts.has(ref))) return editor;
  const pins = (part: EditorPart): EditorPart['pins'] => (facts.package !== undefined && packageNamed(facts.package) ? [] : part.pins);
  const next = onSelected(editor, 'changed', (part) => ({ ...part, ...facts, ...(ref === undefined ? {} : { ref }), pins: pins(part) }));
  return ref === undefined ? next : { ...next, selected: new Set([ref]) };
}

function onSelected(editor: Editor, did: string, change: (part: EditorPart) => EditorPart): Editor {
  const before = selectedParts(editor);
  return before.length === 0 ? editor : changed(editor, `${namesOf(before)} ${did}`, before, before.map(change));
}

export const copied = (editor: Editor): Editor => (editor.selected.size === 0 ? editor : { ...editor, clipboard: selectedParts(editor) });

/** The copied parts once more, a little aside, on the side that is seen, with the next free references, and selected. */
export function pasted(editor: Editor): Editor {
  if (editor.clipboard.length === 0) return editor;
  const taken = new Set(editor.parts.keys());
  const made = editor.clipboard.map((part): EditorPart => {
    const { letters, number } = splitRef(part.ref) ?? { letters: kindOf(part.kind).letters, number: 0 };
    const ref = nextRef(taken, letters, number + 1);
    taken.add(ref);
    return { ...shifted(part, PASTE_SHIFT), ref, side: editor.side };
  });
  const next = changed(editor, `${namesOf(made)} pasted`, [], made);
  return { ...next, selected: new Set(made.map(({ ref }) => ref)), clipboard: editor.clipboard.map((part) => shifted(part, PASTE_SHIFT)) };
}

/** Several parts placed at once, such as proposals of the picture that were accepted. */
export const placedTogether = (editor: Editor, parts: readonly EditorPart[]): Editor =>
  parts.length === 0 ? editor : changed(editor, `${namesOf(parts)} placed`, [], parts);

function changed(editor: Editor, said: string, before: readonly EditorPart[], after: readonly EditorPart[]): Editor {
  const change: Change = { id: editor.nextChange, said, before, after };
  return { ...editor, parts: swapped(editor.parts, before, after), past: [...editor.past, change], future: [], nextChange: change.id + 1 };
}

function swapped(parts: Editor['parts'], out: readonly EditorPart[], into: readonly EditorPart[]): Editor['parts'] {
  const next = new Map(parts);
  for (const { ref } of out) next.delete(ref);
  for (const part of into) next.set(part.ref, part);
  return next;
}

/** The last step taken back. */
export function undone(editor: Editor): Editor {
  const last = editor.past.at(-1);
  if (!last) return editor;
  const parts = swapped(editor.parts, last.after, last.before);
  return {
    ...editor,
    parts,
    past: editor.past.slice(0, -1),
    future: [last, ...editor.future],
    selected: kept(editor.selected, parts),
    pending: null,
  };
}

/** The step that was taken back last, done again. */
export function redone(editor: Editor): Editor {
  const [next, ...future] = editor.future;
  if (!next) return editor;
  const parts = swapped(editor.parts, next.before, next.after);
  const change = { ...next, id: editor.nextChange };
  return { ...editor, parts, past: [...editor.past, change], future, selected: kept(editor.selected, parts), nextChange: change.id + 1 };
}

const kept = (selected: Editor['selected'], parts: Editor['parts']): Editor['selected'] =>
  new Set([...selected].filter((ref) => parts.has(ref)));

const namesOf = (parts: readonly EditorPart[]): string =>
  parts.length > 3 ? `${parts.length} parts` : parts.map(({ ref }) => ref).join(', ');
