import { describe, expect, it } from 'vitest';
import { padsOfPart } from './editor-part.ts';
import {
  beginEditor,
  copied,
  movedBy,
  pasted,
  placedTogether,
  redone,
  removed,
  rewritten,
  tapped,
  turnedOver,
  turnedQuarter,
  undone,
  upcomingRef,
  withAllSelected,
  withBrush,
  withLook,
  withRef,
  withSelection,
  type Editor,
} from './editor.ts';

const empty = beginEditor([]);
const refs = ({ parts }: Editor): string[] => [...parts.keys()];
const at = (x: number, y: number) => ({ x, y });
const click = (editor: Editor, ...places: readonly (readonly [number, number])[]): Editor =>
  places.reduce((now, [x, y]) => tapped(now, at(x, y)), editor);

describe('marking parts', () => {
  it('costs one click for each part that is like the one before, which gets the next number', () => {
    const marked = click(withBrush(empty, { kind: 'capacitor', value: '100n' }), [10, 10], [20, 10], [30, 10]);
    expect(refs(marked)).toEqual(['C1', 'C2', 'C3']);
    expect(marked.parts.get('C3')).toEqual({
      ref: 'C3',
      kind: 'capacitor',
      value: '100n',
      package: '0603',
      side: 'front',
      x: 30,
      y: 10,
      rotation: 0,
      block: '',
      pins: [],
    });
  });

  it('counts on from a number that is said, and jumps over what is taken', () => {
    const marked = click(withRef(click(empty, [10, 10]), 'r12'), [20, 10], [30, 10]);
    expect(refs(marked)).toEqual(['R1', 'R12', 'R13']);
    expect(upcomingRef(withRef(marked, 'R12'))).toBe('R14');
    expect(upcomingRef(withRef(marked, 'no reference'))).toBe('R14');
    expect(refs(click(withRef(marked, 'FB2'), [40, 10], [50, 10]))).toEqual(['R1', 'R12', 'R13', 'FB2', 'FB3']);
  });

  it('counts each kind by itself; another kind comes in its usual package, and as it was last when it was used before', () => {
    const resistors = click(withBrush(empty, { value: '10k' }), [10, 10], [20, 10]);
    const chip = withBrush(resistors, { kind: 'chip' });
    expect(chip.brush).toMatchObject({ package: 'SOIC-8', value: '', letters: 'U' });
    const again = withBrush(click(turnedQuarter(chip), [30, 30]), { kind: 'resistor' });
    expect(again.brush).toMatchObject({ package: '0603', value: '10k', rotation: 0 });
    expect(refs(click(again, [50, 10]))).toEqual(['R1', 'R2', 'U1', 'R3']);
  });

  it('keeps the looks that were used within one click, the latest first, each once', () => {
    const two = click(withBrush(click(withBrush(empty, { value: '10k' }), [10, 10]), { kind: 'capacitor', value: '1u' }), [20, 10]);
    expect(two.recent.map(({ kind, value }) => `${kind} ${value}`)).toEqual(['capacitor 1u', 'resistor 10k']);
    const back = click(withLook(two, two.recent[1]!), [30, 10]);
    expect(refs(back)).toEqual(['R1', 'C1', 'R2']);
    expect(back.recent.map(({ value }) => value)).toEqual(['10k', '1u']);
  });

  it('selects the part under the click instead of placing one over it', () => {
    const again = click(click(empty, [10, 10]), [10.2, 10.1]);
    expect(refs(again)).toEqual(['R1']);
    expect([...again.selected]).toEqual(['R1']);
  });

  it('puts parts on the side that is seen', () => {
    const both = click(turnedOver(click(empty, [10, 10])), [10, 10]);
    expect([...both.parts.values()].map(({ ref, side }) => [ref, side])).toEqual([
      ['R1', 'front'],
      ['R2', 'back'],
    ]);
  });
});

describe('pins by two clicks', () => {
  it('make a row whose middle is the place of the part', () => {
    const marked = click(withBrush(empty, { kind: 'connector', tool: 'row', pins: 5 }), [10, 20], [18, 20]);
    expect(marked.parts.get('J1')).toMatchObject({ x: 14, y: 20, package: '' });
    expect(marked.parts.get('J1')!.pins).toEqual([10, 12, 14, 16, 18].map((x) => [x, 20]));
    expect(padsOfPart(marked.parts.get('J1')!).map(({ pin }) => pin)).toEqual([1, 2, 3, 4, 5]);
  });

  it('make two rows of legs that are counted around, or a field that is counted row by row', () => {
    const around = withBrush(empty, { kind: 'chip', tool: 'grid', grid: { columns: 3, rows: 2, counting: 'around' } });
    const legs = click(around, [10, 10], [14, 16]);
    // Taller than wide: the row of pin 1 runs up, the other comes back down.
    expect(legs.parts.get('U1')!.pins).toEqual([
      [10, 10],
      [10, 13],
      [10, 16],
      [14, 16],
      [14, 13],
      [14, 10],
    ]);
    const field = withBrush(legs, { grid: { columns: 2, rows: 2, counting: 'rows' } });
    expect(click(field, [30, 30], [34, 28]).parts.get('U2')!.pins).toEqual([
      [30, 30],
      [34, 30],
      [30, 28],
      [34, 28],
    ]);
  });

  it('wait for the second click until another tool is taken', () => {
    const waiting = click(withBrush(empty, { tool: 'row' }), [10, 10]);
    expect(waiting.pending).toEqual(at(10, 10));
    expect(withBrush(waiting, { tool: 'place' }).pending).toBeNull();
    expect(waiting.parts.size).toBe(0);
  });
});

describe('changing what is marked', () => {
  const two = click(empty, [10, 10], [20, 10]);

  it('moves, turns and takes away what is selected, and nothing else', () => {
    const chosen = withSelection(two, 'R2');
    const moved = movedBy(chosen, at(1, -2)).parts;
    expect([moved.get('R1')!.x, moved.get('R2')!.x, moved.get('R2')!.y]).toEqual([10, 21, 8]);
    expect(turnedQuarter(chosen).parts.get('R2')!.rotation).toBe(90);
    expect(refs(removed(chosen))).toEqual(['R1']);
    expect(removed(two)).toBe(two);
  });

  it('turns marked pins about the middle of the part, and back to where they were after four quarters', () => {
    const row = withSelection(click(withBrush(empty, { tool: 'row', pins: 2 }), [10, 20], [14, 20]), 'R1');
    const once = turnedQuarter(row);
    expect(once.parts.get('R1')!.pins).toEqual([
      [12, 18],
      [12, 22],
    ]);
    const round = turnedQuarter(turnedQuarter(turnedQuarter(once)));
    expect(round.parts.get('R1')).toEqual(row.parts.get('R1'));
  });

  it('turns the part in the hand while nothing is selected', () => {
    expect(click(turnedQuarter(empty), [10, 10]).parts.get('R1')!.rotation).toBe(90);
  });

  it('gives a new reference to one part, unless it is taken', () => {
    const chosen = withSelection(two, 'R2');
    expect(refs(rewritten(chosen, { ref: 'R7' }))).toEqual(['R1', 'R7']);
    expect(rewritten(chosen, { ref: 'R1' })).toBe(chosen);
    expect(rewritten(withAllSelected(two), { ref: 'R9' })).toEqual(withAllSelected(two));
    expect([...rewritten(withAllSelected(two), { value: '47k' }).parts.values()].map(({ value }) => value)).toEqual(['47k', '47k']);
  });

  it('pastes copies aside with the next free references, again and again', () => {
    const twice = pasted(pasted(copied(withAllSelected(two))));
    expect(refs(twice)).toEqual(['R1', 'R2', 'R3', 'R4', 'R5', 'R6']);
    expect([...twice.parts.values()].map(({ x }) => x)).toEqual([10, 20, 12, 22, 14, 24]);
    expect([...twice.selected]).toEqual(['R5', 'R6']);
    expect(pasted(two)).toBe(two);
  });

  it('selects several when asked to add, and takes one out by the same click', () => {
    const select = withBrush(two, { tool: 'select' });
    const both = tapped(tapped(select, at(10, 10)), at(20, 10), 0, true);
    expect([...both.selected]).toEqual(['R1', 'R2']);
    expect([...tapped(both, at(20, 10), 0, true).selected]).toEqual(['R1']);
    expect(tapped(both, at(40, 40)).selected.size).toBe(0);
  });

  it('takes steps back and does them again, in order, until another step is done', () => {
    const steps = removed(withSelection(movedBy(withSelection(two, 'R2'), at(5, 0)), 'R1'));
    expect(refs(undone(steps))).toEqual(['R2', 'R1']);
    expect(undone(undone(steps)).parts.get('R2')!.x).toBe(20);
    const all = undone(undone(undone(undone(steps))));
    expect(all.parts.size).toBe(0);
    expect(undone(all)).toBe(all);
    expect(redone(redone(redone(redone(all)))).parts).toEqual(steps.parts);
    const other = click(undone(steps), [40, 40]);
    expect(redone(other)).toBe(other);
  });

  it('places many at once as one step', () => {
    const parts = [...two.parts.values()].map((part) => ({ ...part, ref: `${part.ref}0` }));
    const more = placedTogether(two, parts);
    expect(refs(more)).toEqual(['R1', 'R2', 'R10', 'R20']);
    expect(refs(undone(more))).toEqual(['R1', 'R2']);
  });
});
