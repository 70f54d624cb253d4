import { oneLamp, type Step } from '../../testing/events.ts';

const begun: Step = ['model-begun', { model_id: 'lamp-g', name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } }];
const grown = [begun];
const fact = (more: object): Step => [
  'model-fact-set',
  { model_id: 'lamp-g', section: 'blocks', id: 'bulb', field: 'name', value: 'Bulb', ...more },
];
const reading = (more: object): Step => [
  'model-reading-taught',
  { model_id: 'lamp-g', board: 'good-1', point: 'cell-v', mode: 'volts', value: 3, ...more },
];
const part: Step = [
  'model-parts-placed',
  { model_id: 'lamp-g', parts: [{ ref: 'R1', kind: 'resistor', side: 'front', x_mm: 1, y_mm: 2 }] },
];

/** What the rules refuse of the events from which models grow, as the list of refusals has it. */
export const REFUSED_GROWING: readonly [
  title: string,
  before: readonly Step[],
  event: Step,
  code: string,
  field: string,
  message: RegExp,
][] = [
  ['a model of a name that is taken', grown, begun, 'id-taken', 'body.model_id', /"lamp-g" already/],
  [
    'a model of the name of one of the folder',
    [],
    ['model-begun', { ...(begun[1] as object), model_id: 'lamp-2' }],
    'id-taken',
    'body.model_id',
    /"lamp-2" already/,
  ],
  [
    'a copy of a model that is not here',
    [],
    ['model-begun', { ...(begun[1] as object), from: { copy_of: 'lamb-1' } }],
    'unknown-model',
    'body.from.copy_of',
    /"lamb-1"; there are lamp-1/,
  ],
  [
    'a file of a bundle that does not hold together',
    [],
    ['model-begun', { ...(begun[1] as object), from: { file: { id: 'lamp-g' } } }],
    'fact-does-not-fit',
    'body.from.file',
    /format is not as expected/,
  ],
  ['a fact of a model of the folder', grown, fact({ model_id: 'lamp-1' }), 'model-not-grown', 'body.model_id', /there are lamp-g/],
  ['a field that the head does not have', grown, fact({ section: 'head', id: 'blocks' }), 'fact-does-not-fit', 'body.id', /there are/],
  ['a field of an entry that is not there', grown, fact({ id: 'bulp' }), 'fact-does-not-fit', 'body.id', /no entry "bulp"; it has bulb/],
  [
    'a value of the wrong kind',
    grown,
    fact({ section: 'faults', id: 'bulb-open', field: 'rate', value: 7 }),
    'fact-does-not-fit',
    'body.value',
    /rate/,
  ],
  [
    'taking away what others speak of',
    grown,
    fact({ field: undefined, value: null }),
    'fact-does-not-fit',
    'body.value',
    /"bulb", which is not in blocks/,
  ],
  [
    'a part in a block that is not there',
    grown,
    [
      'model-parts-placed',
      { model_id: 'lamp-g', parts: [{ ref: 'R1', kind: 'resistor', side: 'front', x_mm: 1, y_mm: 2, block: 'bulp' }] },
    ],
    'fact-does-not-fit',
    'body.parts.0.block',
    /no block "bulp"/,
  ],
  [
    'taking off a mark that is not there',
    [...grown, part],
    ['model-parts-removed', { model_id: 'lamp-g', refs: ['R1', 'R2'] }],
    'unknown-part',
    'body.refs.1',
    /there are R1/,
  ],
  [
    'joining a pin of no part',
    [...grown, part],
    ['model-pins-joined', { model_id: 'lamp-g', pins: ['R1.1', 'U7.2'] }],
    'unknown-part',
    'body.pins.1',
    /"U7"/,
  ],
  [
    'naming a net at no part',
    grown,
    ['model-net-named', { model_id: 'lamp-g', pin: 'R1.1', name: 'gnd' }],
    'unknown-part',
    'body.pin',
    /none yet/,
  ],
  ['a known-good reading of no point', grown, reading({ point: 'tp9' }), 'unknown-point', 'body.point', /it has cell-v/],
  ['a known-good reading in another mode', grown, reading({ mode: 'ohms' }), 'wrong-mode', 'body.mode', /measured in volts/],
  ['OL in volts', grown, reading({ value: null }), 'wrong-mode', 'body.value', /says nothing in volts/],
  [
    'a step after one that is not there',
    grown,
    ['model-step-recorded', { model_id: 'lamp-g', step: { id: 'lid', name: 'Lid off', after: ['door'] } }],
    'fact-does-not-fit',
    'body.step',
    /"door"/,
  ],
  [
    'a fit in no slot',
    grown,
    ['model-fit-seen', { model_id: 'lamp-g', slot: 'lid', part: 'a lid', outcome: 'fits' }],
    'unknown-slot',
    'body.slot',
    /it has battery, board/,
  ],
  [
    'a fit of nothing',
    grown,
    ['model-fit-seen', { model_id: 'lamp-g', slot: 'board', outcome: 'fits' }],
    'fact-does-not-fit',
    'body.part',
    /name a part/,
  ],
  [
    'judging an item by a model of another',
    [...oneLamp, ...grown],
    ['model-judged-again', { item_id: 'lamp-a', model_id: 'lamp-g' }],
    'unknown-model',
    'body.model_id',
    /"lamp-1", not of "lamp-g"/,
  ],
];
