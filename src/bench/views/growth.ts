import { z } from 'zod';
import { FactSection, FactSource, Id, MarkedPart, MeterMode } from '../events/index.ts';

const told = {
  author: z.string().meta({ description: 'Empty for this bench; else whose bundle it came in' }),
  at: z.string(),
  event_id: z.string(),
};
const PhotoPlace = z.tuple([z.number(), z.number()]);

/** One place of the file that was told, as it counts now. */
export const ToldPlace = z
  .object({
    section: FactSection,
    id: Id,
    field: z.string().nullable().meta({ description: 'Null: the whole entry' }),
    value: z.unknown(),
    source: FactSource,
    ...told,
  })
  .meta({ id: 'ToldPlace' });
export type ToldPlace = z.infer<typeof ToldPlace>;

export const PooledPointView = z
  .object({
    point: Id,
    name: z.string(),
    mode: MeterMode,
    middle: z.number().nullable().meta({ description: 'Median over boards, in V, Ω or A; null is OL, or nothing measured' }),
    spread: z.number().meta({ description: 'How far good boards differ, at least what a meter is off by' }),
    boards: z.array(z.object({ board: z.string(), revision: z.string(), value: z.number().nullable() })),
    revisions: z.array(z.object({ revision: z.string(), middle: z.number().nullable(), boards: z.array(z.string()) })),
    same_chance: z
      .number()
      .nullable()
      .meta({ description: 'Chance that revisions which are alike show so large a difference, put right for the number of points' }),
    differs: z.boolean(),
  })
  .meta({ id: 'PooledPoint' });
export type PooledPointView = z.infer<typeof PooledPointView>;

/** What a unit can teach its model as a known-good board. */
export const TeachView = z
  .object({
    board: z.string(),
    revision: z.string(),
    is_proved: z.boolean().meta({ description: 'Its proof is done, so it is known to be good' }),
    readings: z.array(z.object({ point: Id, name: z.string(), mode: MeterMode, value: z.number().nullable() })),
  })
  .meta({ id: 'Teach' });
export type TeachView = z.infer<typeof TeachView>;

/** How a model grew: all that was told of it beside what it inherits. */
export const GrowthView = z
  .object({
    model_id: Id,
    version: z.number().int().meta({ description: 'How many events made it' }),
    from: z.object({
      kind: z.enum(['answers', 'copy', 'bundle']),
      model_id: z.string().nullable(),
      name: z.string().meta({ description: 'What it inherits, in words' }),
    }),
    begun_at: z.string(),
    places: z.array(ToldPlace).meta({ description: 'All else of the file is inherited' }),
    photos: z.array(
      z.object({
        side: z.enum(['front', 'back']),
        photo: z.string(),
        scale: z.object({ from: PhotoPlace, to: PhotoPlace, mm: z.number() }).nullable(),
        mirror: z.array(z.object({ front: PhotoPlace, back: PhotoPlace })),
        ...told,
      }),
    ),
    parts: z.array(MarkedPart.extend(told).meta({ id: 'ToldPart' })),
    joins: z.array(z.object({ pins: z.array(z.string()), joined: z.boolean(), ...told })),
    net_names: z.array(z.object({ pin: z.string(), name: z.string(), ...told })),
    netlist: z.object({ text: z.string(), from: z.enum(['typed', 'imported']), ...told }).nullable(),
    readings: z.array(
      z.object({
        board: z.string(),
        revision: z.string(),
        point: z.string(),
        mode: MeterMode,
        value: z.number().nullable(),
        item_id: z.string().nullable(),
        ...told,
      }),
    ),
    step_photos: z.array(z.object({ step: z.string(), photo: z.string().nullable(), places: z.array(PhotoPlace), ...told })),
    fits: z.array(
      z.object({
        slot: z.string(),
        other_model_id: z.string().nullable(),
        part: z.string().nullable(),
        outcome: z.enum(['fits', 'bent', 'does-not-fit']),
        item_id: z.string().nullable(),
        ...told,
      }),
    ),
    taken: z.array(z.object({ licence: z.string(), facts: z.number().int(), ...told })),
    left_out: z
      .array(z.object({ place: z.string(), why: z.string(), event_id: z.string() }))
      .meta({ description: 'Facts that do not hold together with the rest any more' }),
    circuit_problems: z.array(z.string()).meta({ description: 'Why its netlist and parts make no circuit yet' }),
  })
  .meta({ id: 'Growth' });
export type GrowthView = z.infer<typeof GrowthView>;
