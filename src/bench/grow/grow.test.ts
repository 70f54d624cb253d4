import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { referenceOf } from '../models/reference.ts';
import type { BenchState } from '../state.ts';
import { testId, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { buildModel } from './build-model.ts';
import { modelsWithGrown } from './models-with-grown.ts';

const shelf = smallModels();
const begun: Step = ['model-begun', { model_id: 'lamp-g', name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } }];
const fact = (section: string, id: string, field: string | undefined, value: unknown): Step => [
  'model-fact-set',
  { model_id: 'lamp-g', section, id, ...(field === undefined ? {} : { field }), value },
];
const teach = (board: string, value: number): Step => [
  'model-reading-taught',
  { model_id: 'lamp-g', board, point: 'cell-v', mode: 'volts', value },
];
const fold = (...steps: Step[]): BenchState => foldLog(testLog(begun, ...steps), shelf);
const modelOf = (state: BenchState) => modelsWithGrown(shelf, () => state).get('lamp-g')!;

describe('a model that grows', () => {
  test('begins as a copy under its own name', () => {
    const { file, version } = modelOf(fold());
    expect(file).toMatchObject({ id: 'lamp-g', name: 'Grown lamp', blocks: shelf.get('lamp-1')!.file.blocks });
    expect(version).toBe(1);
  });

  test('takes facts one by one: a field, a whole entry, one taken away', () => {
    const state = fold(
      fact('faults', 'bulb-open', 'rate', 0.4),
      fact('blocks', 'lens', undefined, { name: 'Lens' }),
      fact('head', 'prices', 'working', 5000),
      fact('head', 'board', undefined, null),
    );
    const { file, version } = modelOf(state);
    expect(file.faults.find(({ id }) => id === 'bulb-open')).toMatchObject({ rate: 0.4, mode: 'open' });
    expect(file.blocks.at(-1)).toEqual({ id: 'lens', name: 'Lens' });
    expect(file.prices).toEqual({ ...shelf.get('lamp-1')!.file.prices, working: 5000 });
    expect(file.board).toBeUndefined();
    expect(version).toBe(5);
  });

  test('pools the readings of known-good boards in place of inherited ones', () => {
    const model = modelOf(fold(teach('a', 3.0), teach('b', 3.1), teach('c', 3.2), teach('c', 9)));
    expect(referenceOf(model, 'cell-v', 'volts')).toMatchObject({ mean: 3.1, boards: 3 });
    expect(model.file.level).toBe(1);
  });

  test('is the same object until it grows, and another one then', () => {
    const state = fold();
    const models = modelsWithGrown(shelf, () => state);
    const before = models.get('lamp-g');
    expect(models.get('lamp-g')).toBe(before);
    expect(modelOf(fold(teach('a', 3)))).not.toBe(before);
  });

  test('loses a fact that was taken back, and leaves out what leaned on it', () => {
    const state = fold(
      fact('blocks', 'lens', undefined, { name: 'Lens' }),
      fact('faults', 'lens-gone', undefined, { name: 'lens gone', block: 'lens', mode: 'missing', rate: 0.1 }),
      fact('faults', 'bulb-open', 'rate', 0.4),
      ['correction', { corrects: testId(2) }],
    );
    const built = buildModel(state.grown.get('lamp-g')!, shelf)!;
    expect(built.leftOut.map(({ fact: { id } }) => id)).toEqual(['lens-gone']);
    expect(built.model.file.faults.find(({ id }) => id === 'bulb-open')!.rate).toBe(0.4);
    expect(built.model.version).toBe(3);
  });

  test('a copy of it keeps what it was at that time', () => {
    const copy: Step = ['model-begun', { model_id: 'lamp-h', name: 'Copy', currency: 'GBP', from: { copy_of: 'lamp-g' } }];
    const state = fold(fact('faults', 'bulb-open', 'rate', 0.4), copy, fact('faults', 'bulb-open', 'rate', 0.7));
    const rate = (id: string) =>
      modelsWithGrown(shelf, () => state)
        .get(id)!
        .file.faults.find((fault) => fault.id === 'bulb-open')!.rate;
    expect([rate('lamp-g'), rate('lamp-h')]).toEqual([0.7, 0.4]);
  });

  test('steps that are recorded are steps of its opening', () => {
    const screws = { id: 'door-screws', name: 'Screws of the door', drive: 'Cross 0', length_mm: 5, count: 2 };
    const state = fold([
      'model-step-recorded',
      { model_id: 'lamp-g', step: { id: 'door', name: 'Door off', tool: 'Cross 0' }, fasteners: screws },
    ]);
    expect(modelOf(state).file.steps.at(-1)).toMatchObject({ id: 'door', fasteners: 'door-screws', tool: 'Cross 0' });
    expect(modelOf(state).file.fasteners.at(-1)).toMatchObject(screws);
  });

  test('the facts of another bench are told by their author', () => {
    const facts = [{ kind: 'model-fact-set', body: { model_id: 'theirs', section: 'head', id: 'about', value: 'Theirs.' } }];
    const state = fold(['model-taken-in', { model_id: 'lamp-g', from_author: 'Marsh Lane', licence: 'CC0', facts }]);
    const grown = state.grown.get('lamp-g')!;
    expect(modelOf(state).file.about).toBe('Theirs.');
    expect(grown.facts[0]!.author).toBe('Marsh Lane');
    expect(grown.version).toBe(2);
  });
});

describe('what left the bench', () => {
  const lamp: Step = [
    'lot-bought',
    {
      lot_id: 'l',
      title: 't',
      seller: 's',
      price_minor: 100,
      currency: 'GBP',
      items: [{ item_id: 'unit', name: 'Unit', model_id: 'lamp-g', expected_value_minor: 1 }],
    },
  ];
  const better = fact('faults', 'bulb-open', 'rate', 0.4);
  const rateFor = (state: BenchState): number => {
    const key = state.items.get('unit')!.modelVersion === null ? 'lamp-g' : `lamp-g@${state.items.get('unit')!.modelVersion}`;
    return modelsWithGrown(shelf, () => state)
      .get(key)!
      .file.faults.find(({ id }) => id === 'bulb-open')!.rate;
  };

  test('keeps the version that it was judged with, and is judged anew when asked', () => {
    const scrapped: Step = ['scrapped', { item_id: 'unit', reason: 'burnt' }];
    const state = fold(lamp, scrapped, better);
    expect(state.items.get('unit')!.modelVersion).toBe(1);
    expect(rateFor(state)).toBe(0.2);
    const again = fold(lamp, scrapped, better, ['model-judged-again', { item_id: 'unit', model_id: 'lamp-g' }]);
    expect(rateFor(again)).toBe(0.4);
  });

  test('older versions are found and not listed', () => {
    const state = fold(lamp, ['kept', { item_id: 'unit' }], better);
    const models = modelsWithGrown(shelf, () => state);
    expect([...models.keys()]).toEqual([...shelf.keys(), 'lamp-g']);
    expect(models.has('lamp-g@1')).toBe(true);
    expect(models.size).toBe(shelf.size + 1);
  });
});

describe('a netlist of which little is drawn', () => {
  const POWER = 'power tree\nXBT1 vbat 0 BATTERY v=3.9 r=0.1\nRF1 vbat vsys 0.05\nXU7 vsys v33 0 vsys LINREG vset=3.3\nC1 v33 0 10u\n';
  const drawn: Step = ['model-netlist-set', { model_id: 'lamp-g', text: POWER }];

  test('makes a circuit of a model whose file says nothing of one, with an unknown load on its rail', () => {
    const { circuit, file } = modelOf(fold(drawn));
    expect(file.level).toBe(2);
    expect(file.circuit).toMatchObject({ rails: { v33: 3.3 }, states: [{ id: 'off' }, { id: 'battery', supplies: { XBT1: 3.9 } }] });
    expect(circuit!.parts.map(({ ref, side }) => `${ref} ${side}`)).toEqual(['BT1 off', 'F1 off', 'U7 off', 'C1 off', 'REST1 off']);
    expect(file.blocks.at(-1)!.id).toBe('not-drawn');
  });

  test('has its parts where they were marked, with the nets that were measured and named', () => {
    const parts = [
      { ref: 'C1', kind: 'capacitor', package: '0603', side: 'front', x_mm: 5, y_mm: 6, pins: [] },
      {
        ref: 'U7',
        kind: 'chip',
        package: 'SOT-23-5',
        side: 'front',
        x_mm: 9,
        y_mm: 6,
        pins: [
          [1, 1],
          [2, 1],
          [3, 1],
          [1, 2],
          [2, 2],
        ],
      },
    ];
    const named: Step[] = ['vsys', '0', 'vsys', '', 'v33'].flatMap((name, i): Step[] =>
      name === '' ? [] : [['model-net-named', { model_id: 'lamp-g', pin: `U7.${i + 1}`, name }]],
    );
    const { circuit } = modelOf(fold(drawn, ['model-parts-placed', { model_id: 'lamp-g', parts }], ...named));
    expect(circuit!.parts.find(({ ref }) => ref === 'U7')).toMatchObject({ side: 'front', x: 9, nets: ['vsys', '0', 'vsys', null, 'v33'] });
    expect(circuit!.parts.find(({ ref }) => ref === 'C1')).toMatchObject({ side: 'front', nets: ['v33', '0'] });
  });

  test('is used all the same where the pads of a part are not known, and says so', () => {
    const parts = [{ ref: 'U7', kind: 'chip', package: 'ODD-9', side: 'front', x_mm: 9, y_mm: 6, pins: [] }];
    const state = fold(drawn, ['model-parts-placed', { model_id: 'lamp-g', parts }]);
    expect(buildModel(state.grown.get('lamp-g')!, shelf)!.circuitProblems[0]).toContain('U7: package');
    expect(modelOf(state).circuit!.parts.find(({ ref }) => ref === 'U7')!.side).toBe('off');
  });
});

describe('a board that is marked and probed, without a netlist', () => {
  const at = (ref: string, kind: string, name: string, x_mm: number, value = '') => ({
    ref,
    kind,
    package: name,
    value,
    side: 'front',
    x_mm,
    y_mm: 6,
  });
  const marked: Step = [
    'model-parts-placed',
    {
      model_id: 'lamp-g',
      parts: [
        at('U7', 'chip', 'SOT-23-5', 9),
        at('F1', 'fuse', '1206', 15),
        at('R1', 'resistor', '0603', 20, '4k7'),
        at('R2', 'resistor', '0603', 24),
      ],
    },
  ];
  const joined = (...pins: string[]): Step => ['model-pins-joined', { model_id: 'lamp-g', pins }];
  const named = (pin: string, name: string): Step => ['model-net-named', { model_id: 'lamp-g', pin, name }];
  const cell = fact('head', 'cell', undefined, { volts: 3, chemistry: 'alkaline' });
  const probed = [
    joined('F1.2', 'U7.1', 'U7.3'),
    joined('U7.5', 'R1.1'),
    joined('R1.2', 'R2.1'),
    named('F1.1', 'battery'),
    named('U7.2', 'ground'),
  ];

  test('has no circuit before something is fed', () => {
    expect(modelOf(fold(cell, marked, joined('U7.5', 'R1.1'))).circuit).toBeUndefined();
  });

  test('has one once battery, ground and a rail are named: the parts lie where they were marked, on the nets that were found', () => {
    const state = fold(cell, marked, ...probed, named('F1.2', 'VSYS'), named('U7.5', '2v5'), joined('R2.2', 'U7.2'));
    const { circuit, file } = modelOf(state);
    expect(file.level).toBe(2);
    expect(file.circuit).toMatchObject({ rails: { v25: 2.5 }, states: [{ id: 'off' }, { id: 'battery', supplies: { XBT1: 3 } }] });
    expect(circuit!.parts.find(({ ref }) => ref === 'U7')).toMatchObject({ side: 'front', x: 9, nets: ['vsys', '0', 'vsys', null, 'v25'] });
    expect(circuit!.parts.find(({ ref }) => ref === 'R1')).toMatchObject({ x: 20, nets: ['v25', expect.any(String)] });
    expect(buildModel(state.grown.get('lamp-g')!, shelf)!.circuitProblems).toEqual(['R2 is not in the circuit: it has no value']);
  });

  test('gives way to a netlist that is typed', () => {
    const typed: Step = ['model-netlist-set', { model_id: 'lamp-g', text: 'own\nXBT1 vbat 0 BATTERY v=3\nR9 vbat 0 1k\n' }];
    const { circuit } = modelOf(fold(cell, marked, ...probed, named('U7.5', '2v5'), typed));
    expect(circuit!.netlist.parts.map(({ name }) => name.toUpperCase())).toContain('R9');
    expect(circuit!.netlist.parts.map(({ name }) => name.toUpperCase())).not.toContain('R1');
  });
});
