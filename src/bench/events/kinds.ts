import { z } from 'zod';
import { LandPattern } from './land-pattern.ts';
import { Judgement, TestName, TestValue, TestVerdict } from './measured.ts';
import { MODEL_BODIES } from './model-kinds.ts';
import { PICTURE_BODIES } from './picture-kinds.ts';
import { Region } from './region.ts';
import {
  Claim,
  Cost,
  Count,
  Currency,
  Day,
  FindingKind,
  Id,
  ItemKind,
  Line,
  MeterMode,
  Minutes,
  Outcome,
  PhotoHash,
  SaleCondition,
  SharedNumber,
  Share,
  Stage,
  TaxRule,
  Text,
} from './words.ts';

/**
 * The bodies of every kind of event, by kind. Kinds and fields are only ever added: an event once written
 * must be readable by every later version.
 */
export const BODIES = {
  'bench-set': z.object({
    name: Line.optional(),
    currency: Currency.optional().meta({ description: 'The currency of the books; fixed by the first money event' }),
    hour_value_minor: Cost.optional().meta({ description: 'What an hour at the bench is worth to the person' }),
    fee_percent: z.number().min(0).max(90).optional().meta({ description: 'Usual selling fee, per cent of the price' }),
    postage_out_minor: Cost.optional().meta({ description: 'Usual postage of a sold unit' }),
  }),
  'listing-weighed': z.object({
    listing_id: Id,
    title: Line,
    text: Text.default(''),
    seller: Line,
    model_id: Id,
    count: Count.default(1),
    price_minor: Cost,
    postage_minor: Cost.default(0),
    currency: Currency,
    rate: z.number().positive().default(1).meta({ description: 'Bench currency for one unit of `currency`' }),
    claims: z.array(Claim).max(50).default([]),
    tax_minor: Cost.default(0).meta({ description: 'Import tax and duty' }),
    closes_at: z.iso.datetime({ offset: true }).optional().meta({ description: 'When it closes' }),
    photos: z.array(PhotoHash).max(20).default([]).meta({ description: 'Pictures of the listing, kept before' }),
  }),
  'listing-dropped': z.object({ listing_id: Id, reason: Line }),
  'lot-bought': z.object({
    lot_id: Id,
    listing_id: Id.optional(),
    title: Line,
    seller: Line,
    price_minor: Cost,
    postage_minor: Cost.default(0),
    tax_minor: Cost.default(0),
    currency: Currency,
    rate: z.number().positive().default(1).meta({ description: 'Bench currency for one unit of `currency`' }),
    items: z
      .array(
        z.object({
          item_id: Id,
          name: Line,
          kind: ItemKind.default('unit'),
          model_id: Id,
          slot: Id.optional().meta({ description: 'For an assembly: the slot of the model that it is made for' }),
          expected_value_minor: Cost.meta({ description: 'The lot is split over its items in proportion to these' }),
        }),
      )
      .min(1, 'a lot holds at least one item')
      .max(500),
  }),
  'item-received': z.object({ item_id: Id, condition: Text.default('') }),
  'claim-made': z.object({ item_id: Id, claim: Claim, text: Text.default('') }),
  'trial-done': z.object({
    item_id: Id,
    function: Id,
    outcome: Outcome,
    with: z.array(Id).max(10).default([]).meta({ description: 'Known-good accessories used in the trial' }),
    minutes: Minutes.default(0),
  }),
  'photo-taken': z.object({
    item_id: Id,
    photo: PhotoHash,
    side: z.enum(['front', 'back', 'inside', 'board-front', 'board-back', 'other']).default('other'),
    caption: Text.default(''),
  }),
  'finding-noted': z.object({
    item_id: Id,
    place: Id,
    sees: FindingKind,
    text: Text.default(''),
    minutes: Minutes.default(0),
    region: Region.optional(),
  }),
  'reading-taken': z.object({
    item_id: Id,
    point: Id,
    mode: MeterMode,
    value: z.number().nullable().meta({ description: 'In V, Ω or A; null when the meter shows OL' }),
    minutes: Minutes.default(0),
  }),
  'step-done': z.object({
    item_id: Id,
    step: Id.meta({ description: 'Step of opening of the model' }),
    way: z.enum(['in', 'back']).default('in').meta({ description: 'Done on the way in, or put back' }),
    minutes: Minutes.default(0),
  }),
  'fasteners-counted': z.object({
    item_id: Id,
    fasteners: Id.meta({ description: 'Set of fasteners of the model' }),
    way: z.enum(['out', 'back']),
    count: z.number().int('must be a whole number').min(0, 'must not be negative').max(1000),
    foreign: z.number().int('must be a whole number').min(0, 'must not be negative').max(1000).default(0).meta({
      description: 'How many of them are of another kind than belongs there',
    }),
  }),
  'opened-to': z.object({ item_id: Id, stage: Stage, minutes: Minutes.default(0) }),
  'remedy-done': z.object({
    item_id: Id,
    remedy: Id,
    place: Id.optional(),
    minutes: Minutes,
    outcome: z
      .enum(['mended', 'not-mended', 'made-worse', 'not-tried-yet'])
      .meta({ description: 'What was seen right after; "not-tried-yet" leaves it to the next trial' }),
    text: Text.default(''),
  }),
  'transplant-done': z.object({
    assembly_id: Id.meta({ description: 'The assembly that moves; a new name when it is taken out of a unit for the first time' }),
    name: Line.optional(),
    slot: Id,
    from_item: Id.nullable().meta({ description: 'The item that it comes out of; null when it lies in the drawer' }),
    to_item: Id.nullable().meta({ description: 'The item that it goes into; null for the drawer' }),
    minutes: Minutes.default(0),
    cost_share: z
      .number()
      .min(0)
      .max(1)
      .optional()
      .meta({ description: 'Share of the cost of its unit that leaves with it the first time; filled in from the model when absent' }),
  }),
  'part-bought': z.object({
    bag_id: Id,
    part: Id,
    name: Line,
    count: Count,
    price_minor: Cost.meta({ description: 'For the whole bag, postage included' }),
    currency: Currency,
    rate: z.number().positive().default(1),
    place: Text.default(''),
    order_id: Id.optional(),
    pattern: LandPattern.optional().meta({ description: 'Terminals of one of them, so that it can be laid over a place' }),
  }),
  'bag-set': z.object({
    bag_id: Id,
    place: Text.optional(),
    pattern: LandPattern.nullable().optional().meta({ description: 'Terminals of one of them; null takes them away' }),
  }),
  'part-used': z.object({ bag_id: Id, item_id: Id, count: Count }),
  'order-placed': z.object({
    order_id: Id,
    supplier: Line,
    lines: z
      .array(z.object({ part: Id, name: Line, count: Count, price_minor: Cost }))
      .min(1)
      .max(200),
    postage_minor: Cost.default(0),
    currency: Currency,
    rate: z.number().positive().default(1),
    due_day: Day.optional().meta({ description: 'It should be here by then; after that it is late' }),
  }),
  'order-arrived': z.object({
    order_id: Id,
    place: Text.default(''),
    counts: z
      .array(z.number().int('must be a whole number').min(0, 'must not be negative').max(1_000_000))
      .max(200)
      .optional()
      .meta({ description: 'How many came of each line, in order; left out: all that had not come' }),
  }),
  'order-cancelled': z.object({
    order_id: Id,
    refund_minor: Cost.default(0).meta({ description: 'Paid back for what did not come, in the currency of the bench' }),
    reason: Text.default(''),
  }),
  'proof-step-done': z.object({
    item_id: Id,
    step: Id,
    outcome: z
      .enum(['pass', 'fail', 'signed-off'])
      .meta({ description: '"signed-off": not passed, and the person says why it may leave all the same' }),
    reason: Text.default(''),
    minutes: Minutes.default(0),
  }),
  'test-done': z.object({
    item_id: Id,
    test: TestName,
    verdict: TestVerdict,
    text: Text.default('').meta({ description: 'What it says, in words that a buyer may read' }),
    values: z.array(TestValue).max(60).default([]),
    known_good: z
      .boolean()
      .default(false)
      .meta({ description: 'Measured on a unit that is known to be well: others of its model are compared with it' }),
    minutes: Minutes.default(0),
  }),
  graded: z.object({
    item_id: Id,
    scale: z.literal('salvor-1'),
    grade: z.enum(['A', 'B', 'C', 'D', 'parts']),
    text: Text.default(''),
    judged: z.array(Judgement).max(20).optional().meta({ description: 'What each criterion of the scale was found to be' }),
  }),
  listed: z.object({ item_id: Id, price_minor: Cost, place: Line }),
  sold: z.object({
    item_id: Id,
    as: z.enum(['working', 'for-parts']),
    price_minor: Cost,
    postage_charged_minor: Cost.default(0),
    fees_minor: Cost.default(0),
    postage_minor: Cost.default(0),
    currency: Currency,
    rate: z.number().positive().default(1),
    buyer: Text.default(''),
  }),
  returned: z.object({
    item_id: Id,
    refund_minor: Cost,
    fees_back_minor: Cost.default(0),
    postage_minor: Cost.default(0),
    reason: Text.default(''),
  }),
  scrapped: z.object({ item_id: Id, reason: Line }),
  kept: z.object({ item_id: Id, reason: Text.default('') }),
  'sale-seen': z.object({
    sale_id: Id,
    model_id: Id,
    day: Day.meta({ description: 'Day of the sale' }),
    price_minor: Cost.min(1, 'must be above zero').meta({ description: 'Paid for the thing, postage left out' }),
    currency: Currency,
    rate: z.number().positive().default(1).meta({ description: 'Bench currency for one unit of `currency`' }),
    condition: SaleCondition,
    complete: Share.optional().meta({ description: 'Share of what belongs to it that came with it' }),
    original: Share.optional().meta({ description: '1 when its screen and shell are its own' }),
    text: Text.default(''),
  }),
  'fees-set': z.object({
    place: Line,
    from_day: Day,
    bands: z
      .array(
        z.object({
          up_to_minor: Cost.nullable().default(null).meta({ description: 'End of the band; null for no end' }),
          percent: z.number().min(0).max(90),
        }),
      )
      .min(1, 'a fee table has at least one band')
      .max(20),
    fixed_minor: Cost.default(0),
    cap_minor: Cost.nullable().default(null).meta({ description: 'The bands together take at most this; null for no cap' }),
  }),
  'postage-set': z.object({
    from_day: Day,
    bands: z
      .array(
        z.object({
          up_to_g: z.number().positive('must be above zero').max(1e6).meta({ description: 'Heaviest parcel of the band, packed' }),
          price_minor: Cost,
        }),
      )
      .min(1, 'a table of postage has at least one band')
      .max(30),
  }),
  'tax-rule-set': z.object({
    rule: TaxRule,
    from_day: Day,
    on: z.boolean().meta({ description: 'False: from that day on the rule is not used any more' }),
    rate_percent: z.number().min(0).max(100).default(0),
    item_limit_minor: Cost.nullable().default(null).meta({ description: 'Dearer things do not go into the pool of `margin-together`' }),
    allowance_minor: Cost.nullable().default(null).meta({ description: 'For `small-trader`: what may come in within a year' }),
  }),
  'sale-text-set': z.object({
    template: z
      .string()
      .trim()
      .min(1, 'must not be empty')
      .max(4000)
      .meta({ description: 'Own words with {model}, {condition}, {works}, {not_tested}, {faults}, {work}, {replaced}, {cell} in them' }),
  }),
  'learning-set': z.object({
    half_life_days: z
      .number()
      .min(1, 'must be at least a day')
      .max(100_000)
      .nullable()
      .meta({ description: 'A job counts half after so many days; null: jobs do not fade' }),
  }),
  'learned-reset': z.object({
    about: Line.meta({ description: 'The learned number; jobs before this do not count for it' }),
    reason: Text.default(''),
  }),
  'plan-set': z.object({
    hours_a_week: z.number().min(0).max(168).optional().meta({ description: 'Hours at the bench in a week' }),
    weeks: z.number().int().min(1).max(52).optional().meta({ description: 'For so many weeks the plan is made' }),
    money_minor: Cost.optional().meta({ description: 'The most that may be spent on parts within them' }),
    risk_share: Share.optional().meta({ description: '0 counts the mean profit alone, 1 the mean of the worst tenth alone' }),
    day_minor: Cost.optional().meta({ description: 'What it costs to wait a day for an order' }),
    within_days: z.number().int().min(1).max(365).optional().meta({ description: 'Orders that take longer are not considered' }),
    lot_per_hour_minor: Cost.optional().meta({ description: 'What an hour at a lot that is bought must bring' }),
    lot_loss_chance: Share.optional().meta({ description: 'Chance to lose money on a lot that is still accepted' }),
    bidders: z.number().int().min(1).max(100).optional().meta({ description: 'How many bid on such a lot, oneself among them' }),
    error_share: Share.optional().meta({ description: 'How far off the worth of a lot may be judged, as a share of it' }),
  }),
  'plan-chosen': z.object({
    item_id: Id,
    does: z
      .enum(['open', 'as-is', 'keep', 'as-planned'])
      .optional()
      .meta({ description: 'What the person does with the item; `as-planned` takes every choice on it back' }),
    slot: Id.optional().meta({ description: 'Or: the slot whose remedy the person chooses' }),
    remedy: z.string().max(400).nullable().optional().meta({ description: 'Its remedies in order, joined by "+"; null for none' }),
    regret_minor: Cost.optional().meta({ description: 'What it was then said to cost' }),
    reason: Text.default(''),
  }),
  'supplier-set': z.object({
    supplier: Line,
    postage_minor: Cost.default(0).meta({ description: 'Of one order, whatever is in it' }),
    days: z.number().int().min(0).max(365).meta({ description: 'From order to parcel' }),
    currency: Currency,
    rate: z.number().positive().default(1).meta({ description: 'Bench currency for one unit of `currency`' }),
    offers: z
      .array(z.object({ part: Id, unit_minor: Cost, least: Count.default(1).meta({ description: 'Fewest that are sold at once' }) }))
      .max(500)
      .meta({ description: 'Without any the supplier is forgotten' }),
  }),
  'learned-taken-in': z.object({
    model_id: Id,
    from: Line.meta({ description: 'Own name for where it comes from' }),
    weight: z
      .number()
      .positive()
      .max(1, 'must not be more than a job of your own')
      .meta({ description: 'A job of theirs counts as so many of yours' }),
    numbers: z
      .array(SharedNumber)
      .min(1, 'holds no number')
      .max(500, 'must not hold more than 500 numbers')
      .refine((numbers) => new Set(numbers.map(({ about, of }) => `${about} ${of}`)).size === numbers.length, 'holds a number twice'),
  }),
  'words-taught': z.object({
    words: Line.regex(/[\p{L}\p{N}]/u, 'must hold a letter or a digit').meta({
      description: 'Words of listings, as the person reads them',
    }),
    claim: Claim.nullable().meta({ description: 'What they claim; null: nothing any more' }),
  }),
  ...MODEL_BODIES,
  ...PICTURE_BODIES,
  'note-written': z.object({ item_id: Id.optional(), text: Text.min(1, 'must not be empty') }),
  'time-clocked': z.object({ item_id: Id.optional(), minutes: Minutes, task: Line }),
  'advice-declined': z.object({ item_id: Id, advice: Id, reason: Text.default('') }),
  correction: z.object({ corrects: z.uuid(), reason: Text.default('') }),
  'demo-put-away': z.object({}),
} as const;

export type Kind = keyof typeof BODIES;
export const KINDS = Object.keys(BODIES) as readonly Kind[];
export type Body<K extends Kind> = z.infer<(typeof BODIES)[K]>;
