import { z } from 'zod';
import { BoardCorners, BoardSide, Caution, FindingKind, Id, Line, MeterMode, Stage } from '../events/index.ts';
import type { LiquidRegion } from '../../core/circuit/index.ts';
import { CircuitSpec } from './circuit-spec.ts';
import type { ModelCircuit } from './model-circuit.ts';
import type { Reference } from './reference.ts';

export { Caution };

/**
 * A device model as it stands in `models/<id>/model.yaml`. One idea a section; every name that a section mentions
 * must be declared in its own section. Chances are 0 to 1, time is minutes, prices are minor units of `currency`.
 */

const Chance = z.number().min(0, 'must be a chance from 0 to 1').max(1, 'must be a chance from 0 to 1');
const Minutes = z.number().min(0, 'must not be negative').max(10_000);
const Price = z.number().int('must be whole minor units (pennies)').min(0, 'must not be negative');
const named = { id: Id, name: Line };

export const FaultMode = z.enum([
  'open',
  'short',
  'leaky',
  'drifted',
  'missing',
  'bridged',
  'dead',
  'dirty-contact',
  'worn',
  'cracked',
  'flat',
]);
export const Shift = z.enum(['low', 'high', 'zero', 'open', 'any']);

export const Block = z.strictObject({
  ...named,
  assembly: Id.optional().meta({ description: 'Slot of the assembly that it is part of' }),
  at: z
    .tuple([z.number(), z.number()])
    .optional()
    .meta({ description: 'Middle of the block on the board, mm from the lower left corner of the front' }),
});

export const DeviceFunctionSpec = z.strictObject({
  ...named,
  needs: z
    .array(z.union([Id, z.strictObject({ any: z.array(Id).min(2) })]))
    .min(1)
    .meta({ description: 'Blocks that must all be healthy; `any` is met by one healthy block of its list' }),
  question: Line.optional().meta({ description: 'How to ask for it: "Does the picture come?"' }),
});

export const FaultSpec = z.strictObject({
  ...named,
  block: Id,
  mode: FaultMode,
  rate: Chance.meta({ description: 'Chance that a unit sold as faulty has it' }),
  behaves: z
    .strictObject({ works: Chance, comes_and_goes: Chance, fails: Chance })
    .optional()
    .meta({ description: 'How a function that needs the block behaves; the default depends on the mode' }),
  seen: z.partialRecord(FindingKind, Chance).default({}).meta({ description: 'Chance of each finding when one looks at the block' }),
  shifts: z.record(Id, Shift).default({}).meta({ description: 'What it does to readings, by point' }),
});

export const PointSpec = z.strictObject({
  ...named,
  block: Id,
  mode: MeterMode,
  power: z.enum(['off', 'battery', 'charger']).default('off').meta({ description: 'Power state in which it is measured' }),
  stage: Stage.default('board-out'),
  side: z.enum(['front', 'back']).default('front'),
  at: z.tuple([z.number(), z.number()]).optional().meta({ description: 'Place on the board in mm' }),
});

export const CheckSpec = z.strictObject({
  ...named,
  minutes: Minutes,
  stage: Stage.default('closed'),
  try: Id.optional().meta({ description: 'A function to try' }),
  with: z.array(Id).default([]).meta({ description: 'Known-good accessories to try it with' }),
  look: Id.optional().meta({ description: 'A block to look at' }),
  measure: Id.optional().meta({ description: 'A point to measure' }),
  cautions: z.array(Caution).default([]),
  how: z.string().max(1000).default(''),
});

export const RemedySpec = z.strictObject({
  ...named,
  kind: z.enum(['clean', 'reflow', 'replace', 'bridge-with-wire', 'adjust', 'transplant']),
  mends: z.record(Id, Chance).meta({ description: 'Chance that it removes each fault' }),
  minutes: Minutes,
  stage: Stage.default('board-out'),
  parts: z.array(z.strictObject({ part: Id, count: z.number().int().min(1).default(1) })).default([]),
  slot: Id.optional().meta({ description: 'For a transplant: the slot whose assembly is changed' }),
  risk: Chance.default(0).meta({ description: 'Chance that the work ruins the unit' }),
  recipe: Id.optional().meta({ description: 'Name of the recipe of the work, where that of its kind is not meant' }),
  cautions: z.array(Caution).default([]),
  how: z.string().max(2000).default(''),
});

export const SlotSpec = z.strictObject({
  ...named,
  value: Price.meta({ description: 'What a working one is worth alone' }),
  minutes: Minutes.meta({ description: 'To change it' }),
  fits: z.array(Id).default([]).meta({ description: 'Other models whose assembly of the same slot fits here' }),
  original_matters: z.boolean().default(false).meta({ description: 'A unit with its own one sells for more' }),
  cautions: z.array(Caution).default([]),
});

export const StepSpec = z.strictObject({
  ...named,
  after: z.array(Id).default([]).meta({ description: 'Steps that must be done before' }),
  after_any: z
    .array(z.array(Id).min(2))
    .default([])
    .meta({ description: 'Alternatives: of each list at least one step must be done before' }),
  tool: Line.optional().meta({ description: 'What is in the hand for it; left out where the fingers do' }),
  side: z.enum(['front', 'back']).optional().meta({ description: 'Side of the device that must be up; left out where either will do' }),
  fasteners: Id.optional(),
  reaches: Stage.optional(),
  frees: z.array(Id).default([]).meta({ description: 'Blocks and slots that can be reached or taken out once it is done' }),
  minutes: Minutes,
  risk: Chance.default(0).meta({ description: 'Chance that it damages something' }),
  cautions: z.array(Caution).default([]),
  put_back: z.boolean().default(true).meta({ description: 'False where closing has nothing to do for it, as for a photograph' }),
  look_for: z
    .array(z.strictObject({ at: Id, sees: z.array(FindingKind).min(1) }))
    .default([])
    .meta({ description: 'Signs to record here, where they show: block, and what may be seen on it' }),
  picture: z
    .string()
    .regex(/^[A-Za-z0-9][A-Za-z0-9_.-]{0,63}\.(?:jpg|png|webp|svg)$/, 'must be the name of a picture in the folder photos of the model')
    .optional()
    .meta({ description: 'Photo or drawing of the step, in the folder `photos` beside the model' }),
  how: z.string().max(1000).default(''),
});

export const PanelSpec = z.strictObject({
  ...named,
  width_mm: z.number().positive().max(1000),
  height_mm: z.number().positive().max(1000),
});

export const FastenerSpec = z.strictObject({
  ...named,
  drive: Line,
  length_mm: z.number().positive(),
  count: z.number().int().min(1),
  panel: Id.optional().meta({ description: 'Face that they sit in' }),
  at: z
    .array(z.tuple([z.number(), z.number()]))
    .default([])
    .meta({ description: 'Place of each, mm from the lower left corner of the panel as one looks at it' }),
  price: Price.optional().meta({ description: 'Of one, for the shopping list' }),
});

export const ModelFile = z
  .strictObject({
    format: z.literal(1),
    ...named,
    revision: z.string().max(60).default(''),
    level: z.union([z.literal(0), z.literal(1), z.literal(2)]),
    about: z.string().max(2000).default(''),
    based_on: Id.optional().meta({ description: 'Another model whose sections are taken over where this file leaves them out' }),
    currency: z.string().regex(/^[A-Z]{3}$/),
    prices: z.strictObject({
      working: Price.meta({ description: 'Typical price of a working one in fair condition' }),
      spread: z.number().min(0).max(2).meta({ description: 'Standard deviation of the logarithm of that price' }),
      for_parts: Price.meta({ description: 'Typical price of a faulty one' }),
    }),
    cell: z.strictObject({ volts: z.number().positive().max(60), chemistry: z.enum(['li-ion', 'nimh', 'alkaline', 'other']) }).optional(),
    weight_g: z.number().positive().max(1e6).optional().meta({ description: 'Of a whole one with its cells, for the post' }),
    opening_minutes: z.strictObject({ open: Minutes, board_out: Minutes }),
    unknown_rate: Chance.default(0.05).meta({ description: 'Chance of something that the list of faults does not hold' }),
    board: z.strictObject({ width_mm: z.number().positive(), height_mm: z.number().positive() }).optional(),
    photo_corners: z
      .array(z.strictObject({ side: BoardSide, corners: BoardCorners }))
      .max(2)
      .optional()
      .meta({ description: 'Where the corners of the board are on the reference photo of a side' }),
    blocks: z.array(Block).min(1),
    slots: z.array(SlotSpec).default([]),
    functions: z.array(DeviceFunctionSpec).min(1),
    faults: z.array(FaultSpec).min(1),
    accessories: z.array(z.strictObject({ ...named, block: Id })).default([]),
    points: z.array(PointSpec).default([]),
    checks: z.array(CheckSpec).min(1),
    remedies: z.array(RemedySpec).min(1),
    parts: z.array(z.strictObject({ ...named, price: Price })).default([]),
    panels: z.array(PanelSpec).default([]).meta({ description: 'Faces with screws in them, for the mat on which the screws lie' }),
    fasteners: z.array(FastenerSpec).default([]),
    steps: z.array(StepSpec).default([]),
    circuit: CircuitSpec.optional().meta({
      description: 'At level 2: netlist, placement, and what of the device hangs on which part of them',
    }),
  })
  .meta({ id: 'ModelFile', title: 'A device model of Salvor, format 1' });
export type ModelFile = z.infer<typeof ModelFile>;

/** One reading of one known-good board, from `models/<id>/readings.csv`. */
export interface ReferenceReading {
  readonly board: string;
  readonly point: string;
  readonly mode: z.infer<typeof MeterMode>;
  /** V, Ω or A; null is OL. */
  readonly value: number | null;
  /** Revision of that board, where it was said. */
  readonly revision?: string;
}

/** A reference photo: a file beside the model file, or one that the bench keeps by its hash. */
export type ReferencePhoto = { readonly side: string } & ({ readonly path: string } | { readonly hash: string });

/** The shipped price of a working one, and from how many known sales the one in its place was learned. */
export interface OwnPrice {
  readonly shippedMinor: number;
  readonly sales: number;
}

/** A model ready for use: its file with what it inherits filled in, and its reference readings and photos. */
export interface Model {
  readonly file: ModelFile;
  /** Of a model that grows on the bench: how many events made it. */
  readonly version?: number;
  /** Where this bench has put numbers of its own in place of those that ship: a name for just these numbers, and its own references by point. */
  readonly own?: { readonly stamp: string; readonly references: ReadonlyMap<string, Reference>; readonly price: OwnPrice | null };
  readonly readings: readonly ReferenceReading[];
  /** By side. */
  readonly photos: readonly ReferencePhoto[];
  /** At level 2: the netlist and the places of its parts. */
  readonly circuit?: ModelCircuit;
  /** What the file of a growing model says of a circuit that cannot be used yet. */
  readonly draftCircuit?: CircuitSpec;
  /** Of one unit: areas of its board where liquid dried, as the person drew them. */
  readonly wet?: readonly LiquidRegion[];
}
