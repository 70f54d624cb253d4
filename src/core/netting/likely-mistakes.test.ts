import { describe, expect, it } from 'vitest';
import { likelyMistakes, oddReadings, type Edit } from './likely-mistakes.ts';

const edit = (net: string, predicted: number[], weight = 1): Edit => ({ nets: [net], predicted, weight });
const READ = { readings: [1, 2, Infinity, 4], spreads: [0.1, 0.1, 0.1, 0.1], asDrawn: [1, 3, 5, 4] };

describe('readings of good boards that a netlist does not predict', () => {
  it('are told with the oddest first; what is OL on one side only is the oddest of all, what is not known is not odd', () => {
    expect(oddReadings(READ)).toEqual([2, 1]);
    expect(oddReadings({ ...READ, asDrawn: [1.3, NaN, Infinity, 4] })).toEqual([]);
  });

  it('are laid to the edit that explains most and spoils least', () => {
    const { edits, nets } = likelyMistakes({
      ...READ,
      edits: [
        edit('half', [1, 2, 5, 4]),
        edit('all', [1, 2, Infinity, 4]),
        edit('spoils', [9, 2, Infinity, 4]),
        edit('none', [1, 3, 5, 4]),
      ],
    });
    expect(
      edits.map(
        ({
          edit: {
            nets: [net],
          },
          explains,
          spoils,
        }) => [net, explains, spoils],
      ),
    ).toEqual([
      ['all', [1, 2], []],
      ['half', [1], []],
      ['spoils', [1, 2], [0]],
    ]);
    expect(nets[0]).toMatchObject({ net: 'all' });
    expect(nets[0]!.chance).toBeGreaterThan(0.99);
  });

  it('weigh a likelier mistake more where both explain the same', () => {
    const same = [1, 2, Infinity, 4];
    const { nets } = likelyMistakes({ ...READ, edits: [edit('rare', same, 0.1), edit('common', same, 1)] });
    expect(nets.map(({ net, chance }) => [net, Number(chance.toFixed(3))])).toEqual([
      ['common', 0.909],
      ['rare', 0.091],
    ]);
  });

  it('do not let one gross reading outweigh several that fit', () => {
    const { edits } = likelyMistakes({
      readings: [1, 1, 1, 50],
      spreads: [0.1, 0.1, 0.1, 0.1],
      asDrawn: [2, 2, 2, 1],
      edits: [edit('three', [1, 1, 1, 1]), edit('one', [2, 2, 2, 50])],
    });
    expect(edits[0]!.edit.nets).toEqual(['three']);
  });

  it('have to be as many as what is predicted', () => {
    expect(() => likelyMistakes({ ...READ, edits: [edit('a', [1])] })).toThrow('4 readings and a list of 1');
  });
});
