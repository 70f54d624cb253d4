import { z } from 'zod';
import { Id, LandPattern } from '../events/index.ts';

/** What parts are to be laid over, and which parts. */
export const FitQuestion = z
  .object({
    place: LandPattern.meta({ description: 'Pads of the place on the board' }),
    parts: z.array(LandPattern).max(500, 'must be at most 500 parts').default([]),
    drawer: z.boolean().default(false).meta({ description: 'Also every bag of the drawer that has terminals on file' }),
    list: z.string().max(2_000_000).default('').meta({ description: 'A supplier’s list as CSV' }),
  })
  .meta({ id: 'FitQuestion' });
export type FitQuestion = z.output<typeof FitQuestion>;

const Room = z.object({ toe_mm: z.number(), heel_mm: z.number(), side_mm: z.number() });

export const FitLine = z
  .object({
    name: z.string(),
    from: z.enum(['given', 'drawer', 'list']),
    bag_id: Id.nullable(),
    count: z.number().int().nullable().meta({ description: 'How many lie in the bag' }),
    supplier: z.string(),
    price: z.string().meta({ description: 'As the list writes it' }),
    answer: z.enum(['fits', 'fits-after-bending', 'does-not-line-up', 'cannot-say']),
    sentence: z.string(),
    bend_mm: z.number(),
    reasons: z.array(z.object({ code: z.string(), sentence: z.string() })),
    asks: z.array(
      z.object({ code: z.string(), of: z.enum(['part', 'place', 'both']).nullable(), decides: z.boolean(), sentence: z.string() }),
    ),
    placing: z.object({ turn_deg: z.number(), dx_mm: z.number(), dy_mm: z.number() }),
    found_by: z.enum(['holes', 'pads', 'nothing']),
    pads: z.array(
      z.object({
        pins: z.array(z.string()),
        onto: z.array(z.string()),
        covered: z.number().meta({ description: 'Shared area over the smaller of the two, 0 to 1' }),
        off_mm: z.number(),
        bend_mm: z.number(),
        room: Room.nullable(),
        level: z.enum(['most', 'nominal', 'least']).nullable(),
      }),
    ),
    unused: z.array(z.string()),
    picture: z.string().meta({ description: 'The part over the pads, as SVG' }),
  })
  .meta({ id: 'FitLine' });
export type FitLine = z.infer<typeof FitLine>;

export const FitView = z
  .object({
    done: z.boolean().meta({ description: 'False when it took too long and not every part was tried' }),
    fits: z.array(FitLine).meta({ description: 'The best first' }),
    without_terminals: z.array(z.object({ bag_id: Id, name: z.string() })).meta({ description: 'Bags that nothing can be said of' }),
    problems: z
      .array(z.object({ line: z.number().int(), sentence: z.string() }))
      .meta({ description: 'Lines of the list that are left out' }),
  })
  .meta({ id: 'FitAnswer' });
export type FitView = z.infer<typeof FitView>;
