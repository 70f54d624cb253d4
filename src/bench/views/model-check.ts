import { z } from 'zod';
import { Id, MeterMode } from '../events/index.ts';

const Reading = z.number().nullable().meta({ description: 'V, Ω or A; null is OL' });

/** What a model can and cannot do now, and what in it cannot be true at once. */
export const ModelCheckView = z
  .object({
    model_id: Id,
    name: z.string(),
    level: z.union([z.literal(0), z.literal(1), z.literal(2)]),
    functions: z.array(
      z.object({
        id: Id,
        name: z.string(),
        by: z.enum(['circuit', 'blocks']).meta({ description: 'Whether its circuit tells when it works, or the blocks that it needs' }),
      }),
    ),
    faults: z
      .object({
        by: z.enum(['circuit', 'blocks']),
        count: z.int(),
        groups: z.int().meta({ description: 'Groups that some check tells from each other' }),
        largest: z
          .array(z.object({ name: z.string(), others: z.int() }))
          .meta({ description: 'Groups of faults that nothing tells apart, largest first' }),
      })
      .nullable()
      .meta({ description: 'Null while the circuit is being computed' }),
    points: z
      .array(
        z.object({
          id: Id,
          name: z.string(),
          minutes: z.number(),
          saving_minor: z.number().meta({ description: 'What reading it is expected to save on a unit that fails' }),
          bits: z.number(),
        }),
      )
      .meta({ description: 'Points that would help most to have, the most saving first' }),
    points_for: z.string().nullable().meta({ description: 'The function that the unit fails at for which the points are weighed' }),
    currency: z.string(),
    unknown_loads: z
      .array(z.object({ rail: z.string(), volts: z.number() }))
      .meta({ description: 'Rails on which something hangs that is not drawn' }),
    compared: z.int().meta({ description: 'Readings of good boards that the netlist was held against' }),
    odd: z.array(
      z.object({
        point: Id,
        name: z.string(),
        mode: MeterMode,
        read: Reading,
        spread: z.number(),
        predicted: Reading,
        spreads: z.number().nullable().meta({ description: 'How far off, in spreads; null where only one of the two is OL' }),
      }),
    ),
    mistakes: z
      .array(z.object({ net: z.string(), chance: z.number(), text: z.string(), explains: z.int(), spoils: z.int(), next: z.string() }))
      .meta({ description: 'Where the netlist is most likely wrong, if it is wrong at one place' }),
    thought: z.int().meta({ description: 'So many mistakes were thought of by now; asked again it goes on' }),
    to_think: z.int(),
    contradictions: z.array(z.object({ text: z.string(), next: z.string() })),
    mismatches: z.array(z.object({ text: z.string(), mends: z.array(z.string()) })),
    problems: z.array(z.string()).meta({ description: 'What keeps the netlist, or a part of it, from being used' }),
  })
  .meta({ id: 'ModelCheck' });
export type ModelCheckView = z.infer<typeof ModelCheckView>;
