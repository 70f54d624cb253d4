import { describe, expect, it } from 'vitest';
import { MarkedPart } from '../../../bench/events/index.ts';
import { markParts } from '../actions/mark-parts.ts';
import { keyed } from './editor-keys.ts';
import { areSame, stepBetween } from './editor-steps.ts';
import { beginEditor, pasted, copied, redone, rewritten, tapped, undone, withAllSelected, withBrush, withSelection } from './editor.ts';
import { acceptedAll } from './ghosts.ts';
import { fromBody, toBody } from './marked-part.ts';

const one = tapped(beginEditor([]), { x: 10, y: 10 });
const key = (name: string, more: { shiftKey?: boolean; withCtrl?: boolean } = {}) => ({
  key: name,
  shiftKey: false,
  withCtrl: false,
  ...more,
});

describe('what is stored of a step', () => {
  it('is a new step, or the one that was taken back, or nothing', () => {
    const two = tapped(one, { x: 20, y: 10 });
    expect(stepBetween(one, two).done?.after.map(({ ref }) => ref)).toEqual(['R2']);
    expect(stepBetween(two, undone(two)).takenBack).toBe(two.past.at(-1));
    expect(stepBetween(undone(two), redone(undone(two))).done?.said).toBe('R2 placed');
    expect(stepBetween(two, withSelection(two, 'R1'))).toEqual({});
  });

  it('is the parts that are new or otherwise, and before them those that are gone', () => {
    const renamed = rewritten(withSelection(one, 'R1'), { ref: 'R7' });
    const { drafts, said } = markParts('m', stepBetween(one, renamed).done!);
    expect(said).toBe('R1 changed');
    expect(drafts.map(({ kind }) => kind)).toEqual(['model-parts-removed', 'model-parts-placed']);
    expect(drafts[0]!.body).toEqual({ model_id: 'm', refs: ['R1'] });
  });

  it('comes back from the log as it was, whichever way it was marked', () => {
    const row = withBrush(one, { kind: 'key', tool: 'row', pins: 3 });
    const marked = tapped(tapped(row, { x: 30, y: 10 }), { x: 34, y: 10 });
    const outline = [10, 12].flatMap((x) => [20, 21].map((y) => ({ x, y })));
    const all = acceptedAll(marked, [{ kind: 'part', chance: 1, reference: null, side: 'back', outline, rows: [] }]);
    const stored = [...all.parts.values()].map((part) => fromBody(MarkedPart.parse(toBody(part))));
    expect(stored.map(({ kind }) => kind)).toEqual(['resistor', 'key', expect.any(String)]);
    expect(areSame(stored, all.parts)).toBe(true);
    expect(areSame(stored.slice(1), all.parts)).toBe(false);
    expect(areSame([{ ...stored[0]!, value: '1k' }, ...stored.slice(1)], all.parts)).toBe(false);
  });
});

describe('keys on the picture', () => {
  it('take a tool, turn, show the other side, and let go', () => {
    expect(keyed(one, key('s'))!.brush.tool).toBe('select');
    expect(keyed(one, key('R'))!.brush.rotation).toBe(90);
    expect(keyed(one, key('t'))!.side).toBe('back');
    expect(keyed(withAllSelected(one), key('Escape'))!.selected.size).toBe(0);
    expect(keyed(withAllSelected(one), key('Delete'))!.parts.size).toBe(0);
    expect(keyed(one, key('q'))).toBeNull();
  });

  it('bring back a look that was used by its number, and nothing for a number that has none', () => {
    const other = withBrush(one, { kind: 'chip' });
    expect(keyed(other, key('1'))!.brush.kind).toBe('resistor');
    expect(keyed(other, key('5'))).toBeNull();
  });

  it('take steps back and on, copy and paste with Ctrl', () => {
    const ctrl = { withCtrl: true };
    const all = keyed(one, key('a', ctrl))!;
    expect(keyed(keyed(all, key('c', ctrl))!, key('v', ctrl))).toEqual(pasted(copied(all)));
    const back = keyed(one, key('z', ctrl))!;
    expect(back.parts.size).toBe(0);
    expect(keyed(back, key('Z', { ...ctrl, shiftKey: true }))!.parts.size).toBe(1);
    expect(keyed(back, key('y', ctrl))!.parts.size).toBe(1);
    expect(keyed(one, key('s', ctrl))).toBeNull();
  });
});
