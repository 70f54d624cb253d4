import { describe, expect, it } from 'vitest';
import { BoardWork, boardTask, GrownKnowledge, simulatedPairs, type Boards } from '../../boards/index.ts';
import { boardFaults } from '../../boards/board-faults.ts';
import type { Model } from '../../models/index.ts';
import { DARK, lampFile, LAMP_MODEL, read, type Steps } from '../testing/lamp-board.ts';
import { wetModel } from './wet-model.ts';

/** Around the two capacitors behind the regulator. */
const REGION = {
  side: 'front' as const,
  polygon: [
    [20, 2],
    [28, 2],
    [28, 8],
    [20, 8],
  ] as [number, number][],
};
const AREA = { id: 'wet-1', ...REGION };

/** All that circuits say, computed at once. */
function computedBoards(): Boards {
  const made = new Map<string, ReturnType<Boards['knowledge']>>();
  return {
    knowledge: (model: Model, confirmed) => {
      const key = JSON.stringify([model.wet ?? [], confirmed]);
      const known = made.get(key);
      if (known) return known;
      const task = boardTask(model, confirmed);
      const grown = new GrownKnowledge(task, key, simulatedPairs(task));
      grown.take(new BoardWork(task).rows(0, grown.rows));
      made.set(key, grown.knowledge());
      return grown.knowledge();
    },
  };
}

describe('a board on which liquid dried', () => {
  it('may leak between neighbours in the drawn area, and its parts there fail sooner', () => {
    const [dry, wet] = [boardFaults(LAMP_MODEL), boardFaults(wetModel(LAMP_MODEL, [AREA]))];
    const leaks = wet.filter(({ circuit }) => circuit.kind === 'liquid-leak');
    expect(leaks.map(({ name }) => name)).toEqual([expect.stringMatching(/^Leakage between (ground and V33|V33 and ground)$/)]);
    const rate = (faults: typeof dry, id: string): number => faults.find((fault) => fault.id === id)!.rate;
    expect(rate(wet, 'c1:short')).toBeCloseTo(3 * rate(dry, 'c1:short'), 12);
    expect(rate(wet, 'c3:short')).toBe(rate(dry, 'c3:short'));
  });

  it('is one model for the same areas and the plain one without any', () => {
    expect(wetModel(LAMP_MODEL, [AREA])).toBe(wetModel(LAMP_MODEL, [{ ...AREA }]));
    expect(wetModel(LAMP_MODEL, [])).toBe(LAMP_MODEL);
  });

  it('is thought to leak when it reads so, which nobody thinks of before the area is drawn', () => {
    const boards = computedBoards();
    const leaks = (file: ReturnType<typeof lampFile>): boolean =>
      file.belief.hypotheses.some(({ faults, alike }) => [...faults, ...alike].some(({ name }) => name.startsWith('Leakage')));
    const low = read('v33.ohms', 8400, 'ohms');
    const seen: Steps[number] = ['finding-noted', { item_id: 'u1', place: 'regulator', sees: 'residue', region: REGION }];
    expect(leaks(lampFile([...DARK, low], { boards }))).toBe(false);
    const file = lampFile([...DARK, seen, low], { boards });
    expect(leaks(file)).toBe(true);
    const words = [...file.advice.other_remedies, ...(file.advice.remedy ? [file.advice.remedy] : [])].map(({ name }) => name);
    expect(words.some((name) => name.startsWith('Wash off what leaks'))).toBe(true);
  });
});
