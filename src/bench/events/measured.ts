import { z } from 'zod';
import { CRITERION_IDS } from '../grading/scale.ts';
import { Line } from './words.ts';

/** Tests that give numbers. */
export const TestName = z
  .enum(['charge-log', 'heat-log', 'sound', 'display', 'colour'])
  .meta({ description: 'What was measured: a log of a charge or of heat, a tone, a display, the colour of a shell' });
export type TestName = z.infer<typeof TestName>;

export const TestVerdict = z
  .enum(['good', 'suspect', 'bad', 'not-known'])
  .meta({ description: '"not-known": what was measured does not tell' });
export type TestVerdict = z.infer<typeof TestVerdict>;

const Criterion = z.enum(CRITERION_IDS).meta({ description: 'A criterion of the scale of grades' });

/** One number of a test, with its unit; where the scale of grades asks for it, under which criterion. */
export const TestValue = z.object({
  name: Line,
  value: z.number(),
  unit: z.string().trim().max(60),
  criterion: Criterion.optional(),
});
export type TestValue = z.infer<typeof TestValue>;

export const Judgement = z.object({ criterion: Criterion, value: z.number().min(0, 'must not be negative') });
export type Judgement = z.infer<typeof Judgement>;
