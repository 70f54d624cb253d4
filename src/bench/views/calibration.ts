import { z } from 'zod';
import { Id } from '../events/index.ts';
import { Road } from './advice.ts';
import { Chance, Money, Why } from './measures.ts';

const Forecast = z.object({
  about: z.enum(['end', 'remedy', 'trial']).meta({
    description: 'That a unit ends as a working one, that it works after a remedy, that a function works when tried',
  }),
  count: z.number().int(),
  score: z.number().meta({ description: 'Brier score: mean square of chance less outcome, 0 best' }),
  calibration: z.number().meta({ description: 'Part of the score: what was said against what came, over the bands, 0 best' }),
  resolution: z.number().meta({ description: 'Part of the score that comes off: how far the bands part what came from what did not' }),
  uncertainty: z.number().meta({ description: 'What the score would be by always saying the share that came' }),
  within_bands: z.number().meta({ description: 'What the bands blur' }),
  bands: z.array(
    z.object({
      low: z.number(),
      high: z.number(),
      count: z.number().int(),
      said: z.number().meta({ description: 'Mean chance that was said' }),
      came: z.number().meta({ description: 'Share that came' }),
      came_low: z.number().meta({ description: 'Lower limit of nine in ten for that share' }),
      came_high: z.number(),
    }),
  ),
});

const Estimate = z.object({
  item_id: Id,
  number: z.number().int(),
  name: z.string(),
  at: z.string(),
  expected: z.number(),
  low: z.number().nullable().meta({ description: 'Limits of four in five, where there are any' }),
  high: z.number().nullable(),
  came: z.number(),
});

const Decided = z.object({
  item_id: Id,
  number: z.number().int(),
  name: z.string(),
  road: Road,
  chance: Chance.meta({ description: 'That it ends as a working unit, as it was thought at the start' }),
  worked: z.boolean(),
  expected_minor: Money,
  came_minor: Money.meta({ description: 'What it brought from then on, minutes paid' }),
  lesson: z.string(),
});

export const CalibrationView = z
  .object({
    currency: z.string(),
    judged: z.number().int().meta({ description: 'Events whose expectation has been reckoned' }),
    to_judge: z.number().int().meta({ description: 'All that are to be; ask again while fewer are judged' }),
    forecasts: z.array(Forecast),
    price: z.array(Estimate).meta({ description: 'Minor units' }),
    minutes: z.array(Estimate),
    parts: z.array(Estimate).meta({ description: 'Minor units spent on parts and postage' }),
    best: z.array(Decided),
    worst: z.array(Decided),
    why: Why,
  })
  .meta({ id: 'Calibration' });
export type CalibrationView = z.infer<typeof CalibrationView>;
