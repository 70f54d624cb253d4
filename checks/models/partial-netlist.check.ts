import { beforeAll, describe, expect, it } from 'vitest';
import { boardFaults } from '../../src/bench/boards/board-faults.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { Level2Board, level2Models } from './level-2-board.ts';
import { treeOf } from './stripped-models.ts';

let whole: Model;
let tree: Model;
beforeAll(async () => {
  whole = (await level2Models()).get('tern-tn20')!;
  tree = await treeOf(whole);
});

describe('a Tern TN-20 of which only the power tree is drawn', () => {
  it('has a tenth of its parts, and unknown loads on its rails', () => {
    expect(tree.circuit!.netlist.parts.length).toBeLessThan(whole.circuit!.netlist.parts.length / 3);
    expect(tree.circuit!.parts.filter(({ ref }) => ref.startsWith('REST')).map(({ nets }) => nets)).toHaveLength(5);
    expect(Object.keys(tree.file.circuit!.rails)).toEqual(['vbat', 'vsys', 'v50', 'v33', 'v18']);
  });

  it('still reads its rails as a whole board does', () => {
    const [a, b] = [new Level2Board(whole), new Level2Board(tree)];
    for (const point of ['VBAT', 'VSYS', 'V50', 'V33']) {
      const [expected, read] = [a.reading(point)!, b.reading(point)!];
      expect(Math.abs(read - expected) / expected, point).toBeLessThan(0.03);
    }
  });

  it('names what is not drawn among its faults, and no fault of a part that it lacks', () => {
    const faults = boardFaults(tree);
    expect(faults.filter(({ block }) => block === 'not-drawn').map(({ name }) => name)).toContain('Something that is not drawn shorts V33');
    expect(faults.some(({ refs }) => refs[0] === 'U1')).toBe(false);
  });
});
