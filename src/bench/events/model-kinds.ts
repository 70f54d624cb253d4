import { z } from 'zod';
import { Caution, Currency, Id, Line, MeterMode, Minutes, PhotoHash } from './words.ts';

/** Kinds of events from which the model of a device grows on the bench, field by field and board by board. */

const Ref = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9]{0,15}$/, 'must be a reference such as R12 or J4')
  .meta({ description: 'Reference of a part on the board' });
const Pin = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9]{0,15}\.[A-Za-z0-9]{1,8}$/, 'must be a pin such as U1.3')
  .meta({ description: 'Pin of a part: its reference, a dot, and the name or number of the pin' });
const Millimetre = z.number().min(-2000, 'must be a place in mm').max(2000, 'must be a place in mm');
const Pixel = z.number().min(-100_000).max(100_000);
const Place = z.tuple([Millimetre, Millimetre]);
const PhotoPlace = z.tuple([Pixel, Pixel]);
const Side = z.enum(['front', 'back']);

export const FactSource = z
  .enum(['measured', 'typed', 'inherited'])
  .meta({ description: 'Where a fact of a model comes from: measured here, typed in, or taken over from what it was begun from' });
export type FactSource = z.infer<typeof FactSource>;

/** Sections of a model file that facts may change; `head` is every field that stands by itself. */
export const FACT_SECTIONS = [
  'head',
  'blocks',
  'slots',
  'functions',
  'faults',
  'accessories',
  'points',
  'checks',
  'remedies',
  'parts',
  'panels',
  'fasteners',
  'steps',
  'circuit',
] as const;
export const FactSection = z.enum(FACT_SECTIONS);
export type FactSection = z.infer<typeof FactSection>;

const MOST_FACT_CHARACTERS = 20_000;
/** Any JSON. Written as `unknown`, for a schema of all JSON names itself, which the description of the interface cannot. */
const FactValue = z
  .unknown()
  .refine((value) => value !== undefined, 'is missing')
  .refine((value) => (JSON.stringify(value) ?? '').length <= MOST_FACT_CHARACTERS, 'must be at most 20,000 characters as JSON')
  .meta({ description: 'The whole entry without its id, or the value of `field`; null takes it away' });

export const PART_KINDS = [
  'resistor',
  'capacitor',
  'inductor',
  'diode',
  'light',
  'transistor',
  'chip',
  'crystal',
  'fuse',
  'switch',
  'connector',
  'test-point',
  'hole',
  'other',
] as const;

export const MarkedPart = z
  .object({
    ref: Ref,
    kind: z.enum(PART_KINDS),
    value: z.string().trim().max(60).default(''),
    package: z.string().trim().max(40).default(''),
    side: Side,
    x_mm: Millimetre,
    y_mm: Millimetre,
    rotation_deg: z.number().min(-360).max(360).default(0),
    block: Id.optional().meta({ description: 'Block of the model that it belongs to' }),
    pins: z.array(Place).max(400).default([]).meta({ description: 'Place of each pin in order, mm' }),
  })
  .meta({ id: 'MarkedPart', description: 'A part on the picture of a board; mm from the lower left corner of the front' });
export type MarkedPart = z.infer<typeof MarkedPart>;

/** The six questions with which a model may begin. */
export const StartAnswers = z
  .object({
    power: z.enum(['battery', 'battery-and-charger', 'mains-supply']).meta({ description: 'What drives it' }),
    cell_volts: z
      .number()
      .positive()
      .max(60)
      .nullable()
      .meta({ description: 'Of the whole battery when full enough to run; null: not known' }),
    display: z.enum(['none', 'plain', 'lit']),
    slot: z.boolean().meta({ description: 'Takes cartridges, tapes or cards' }),
    sound: z.enum(['none', 'speaker', 'socket']),
    charging: z.boolean().meta({ description: 'Charges its own battery' }),
  })
  .meta({ id: 'StartAnswers' });
export type StartAnswers = z.infer<typeof StartAnswers>;

const RecordedStep = z.object({
  id: Id,
  name: Line,
  tool: Line.optional(),
  side: Side.optional(),
  after: z.array(Id).max(20).default([]),
  reaches: z.enum(['open', 'board-out']).optional(),
  frees: z.array(Id).max(40).default([]),
  minutes: Minutes.default(0.5),
  cautions: z.array(Caution).max(8).default([]),
  how: z.string().trim().max(1000).default(''),
});
const RecordedFasteners = z.object({
  id: Id,
  name: Line,
  drive: Line,
  length_mm: z.number().positive().max(500),
  count: z.number().int().min(1).max(200),
});

const model_id = Id;

const GROWING = {
  'model-fact-set': z.object({
    model_id,
    section: FactSection,
    id: Id.meta({ description: 'Entry of the section; in `head` and `circuit` the name of the field' }),
    field: Id.optional().meta({ description: 'One field of the entry; without it `value` is the whole entry' }),
    value: FactValue,
    source: FactSource.default('typed'),
  }),
  'model-photo-set': z.object({
    model_id,
    side: Side,
    photo: PhotoHash,
    size: PhotoPlace.optional().meta({
      description: 'Size of the picture on which it was marked, px; places on it are counted from its upper left',
    }),
    corners: z
      .array(PhotoPlace)
      .max(3)
      .default([])
      .meta({ description: 'Of the front: lower left, lower right and upper left corner of the board, px' }),
    scale: z
      .object({ from: PhotoPlace, to: PhotoPlace, mm: z.number().positive().max(2000) })
      .optional()
      .meta({ description: 'Two points of the picture, px, and how far apart they are' }),
    mirror: z
      .array(z.object({ front: PhotoPlace, back: PhotoPlace }))
      .max(60)
      .default([])
      .meta({ description: 'The same holes on both pictures, px; they lay the back under the front' }),
  }),
  'model-parts-placed': z.object({ model_id, parts: z.array(MarkedPart).min(1).max(500) }),
  'model-parts-removed': z.object({ model_id, refs: z.array(Ref).min(1).max(500) }),
  'model-pins-joined': z.object({
    model_id,
    pins: z.array(Pin).min(2, 'needs two pins or more').max(400),
    joined: z.boolean().default(true).meta({ description: 'False: measured as not joined' }),
  }),
  'model-net-named': z.object({
    model_id,
    pin: Pin,
    name: z.string().regex(/^[A-Za-z0-9_][A-Za-z0-9_.+#-]{0,63}$/, 'must be a name of a net, such as 3v3; ground is 0'),
  }),
  'model-netlist-set': z.object({
    model_id,
    text: z.string().max(500_000, 'must be at most 500,000 characters'),
    from: z.enum(['typed', 'imported']).default('typed'),
  }),
  'model-reading-taught': z.object({
    model_id,
    board: Line.max(60).meta({ description: 'The known-good board that was measured' }),
    revision: z.string().trim().max(60).default(''),
    point: Id,
    mode: MeterMode,
    value: z.number().nullable().meta({ description: 'In V, Ω or A; null when the meter shows OL' }),
    item_id: Id.optional().meta({ description: 'The item on the bench that it was, if it was one' }),
  }),
  'model-step-recorded': z.object({
    model_id,
    step: RecordedStep,
    fasteners: RecordedFasteners.optional(),
    photo: PhotoHash.optional(),
    at: z.array(PhotoPlace).max(200).default([]).meta({ description: 'Places of its fasteners on that photo, px' }),
  }),
  'model-fit-seen': z.object({
    model_id,
    slot: Id,
    other_model_id: Id.optional(),
    part: Line.optional().meta({ description: 'A part by its name, where it is of no model' }),
    outcome: z.enum(['fits', 'bent', 'does-not-fit']).meta({ description: 'bent: fits after bending or filing' }),
    item_id: Id.optional(),
  }),
} as const;

export type GrowingKind = keyof typeof GROWING;
export const GROWING_KINDS = Object.keys(GROWING) as readonly GrowingKind[];
export const isGrowing = (kind: string): kind is GrowingKind => Object.hasOwn(GROWING, kind);

const Author = z.string().trim().max(100).default('').meta({ description: 'Whose word it is; empty for whoever gives the bundle' });
const factOf = <K extends GrowingKind>(kind: K) => z.object({ kind: z.literal(kind), body: GROWING[kind], author: Author });

/** A fact as it stands in a bundle: the kind and body of the event that it was. */
export const SharedFact = z.discriminatedUnion('kind', [
  factOf('model-fact-set'),
  factOf('model-photo-set'),
  factOf('model-parts-placed'),
  factOf('model-parts-removed'),
  factOf('model-pins-joined'),
  factOf('model-net-named'),
  factOf('model-netlist-set'),
  factOf('model-reading-taught'),
  factOf('model-step-recorded'),
  factOf('model-fit-seen'),
]);
export type SharedFact = z.infer<typeof SharedFact>;

export const MODEL_BODIES = {
  'model-begun': z.object({
    model_id,
    name: Line,
    revision: z.string().trim().max(60).default(''),
    currency: Currency,
    from: z
      .union([
        z.object({ answers: StartAnswers }),
        z.object({ copy_of: Id }),
        z.object({ file: z.record(z.string(), z.unknown()).meta({ description: 'A model file that came in a bundle' }) }),
      ])
      .meta({ description: 'What it takes over: any pocket player as the answers leave it, another model, or the file of a bundle' }),
  }),
  ...GROWING,
  'model-taken-in': z.object({
    model_id,
    from_author: Line.max(100),
    licence: z.string().trim().max(100).default(''),
    facts: z.array(SharedFact).max(20_000),
  }),
  'model-judged-again': z.object({ item_id: Id, model_id }),
} as const;
