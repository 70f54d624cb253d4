import { z } from 'zod';
import { SharedFact, StartAnswers } from './model-kinds.ts';
import { Currency, Id, Line } from './words.ts';

/** The newest version of the bundle of a model; this code reads all versions up to it. */
export const MODEL_BUNDLE_VERSION = 1;
export const MODEL_BUNDLE_FORMAT = 'salvor-model';

/** A grown model to be given away: what it was begun from, and every fact as the body of the event that would tell it. */
export const ModelBundle = z
  .object({
    format: z.literal(MODEL_BUNDLE_FORMAT),
    version: z.number().int().min(1).max(MODEL_BUNDLE_VERSION),
    model_id: Id,
    name: Line,
    revision: z.string().trim().max(60).default(''),
    currency: Currency,
    author: Line.max(100).meta({ description: 'A name that whoever gives it away chose' }),
    licence: z.string().trim().max(100).default('').meta({ description: 'Under which others may use it, in words' }),
    from: z.union([z.object({ answers: StartAnswers }), z.object({ copy_of: Id }), z.object({ file: z.record(z.string(), z.unknown()) })]),
    facts: z.array(SharedFact).max(20_000),
  })
  .meta({ id: 'ModelBundle' });
export type ModelBundle = z.infer<typeof ModelBundle>;

/** Hashes of the photos that belong to a bundle. */
export const photosOf = ({ facts }: ModelBundle): string[] => [
  ...new Set(facts.flatMap((fact) => ('photo' in fact.body && fact.body.photo !== undefined ? [fact.body.photo] : []))),
];
