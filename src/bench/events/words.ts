import { z } from 'zod';

/** Names that the person or a program gives to things: short, printable, safe in a path and in a URL. */
export const Id = z
  .string()
  .regex(
    /^[A-Za-z0-9][A-Za-z0-9_.-]{0,63}$/,
    'must be 1 to 64 letters, digits, dots, dashes or underscores, starting with a letter or digit',
  )
  .meta({ description: 'Name of a thing, chosen by whoever records it first' });

export const Text = z.string().trim().max(4000, 'must be at most 4,000 characters');
export const Line = z.string().trim().min(1, 'must not be empty').max(200, 'must be at most 200 characters');

export const PhotoHash = z.string().regex(/^[0-9a-f]{64}$/, 'must be the SHA-256 of the photo in hexadecimal');

/** Money is whole minor units (pennies) of a currency that stands beside it or is the bench's own. */
export const Minor = z.number().int('must be whole minor units (pennies)').min(-1e12).max(1e12);
export const Cost = Minor.min(0, 'must not be negative');
export const Currency = z.string().regex(/^[A-Z]{3}$/, 'must be a three-letter currency code such as GBP');
export const Minutes = z.number().min(0, 'must not be negative').max(100_000, 'must be below 100,000 minutes');
export const Count = z.number().int('must be a whole number').min(1, 'must be at least 1').max(1_000_000);

export const Outcome = z.enum(['works', 'fails', 'comes-and-goes']).meta({ description: 'How a function behaves when tried' });
export type Outcome = z.infer<typeof Outcome>;

/** How far a unit is opened: a check or remedy names the stage that it needs. */
export const Stage = z.enum(['closed', 'open', 'board-out']);
export type Stage = z.infer<typeof Stage>;
export const STAGES: readonly Stage[] = Stage.options;

export const FindingKind = z
  .enum([
    'nothing-wrong',
    'missing',
    'bridged',
    'moved',
    'corrosion',
    'residue',
    'track-damaged',
    'dry-joint',
    'burnt',
    'cracked',
    'dirty',
    'worn',
    'loose',
    'swollen',
    'opened-before',
  ])
  .meta({ description: 'What is seen at a place; "nothing-wrong" means looked and saw nothing' });
export type FindingKind = z.infer<typeof FindingKind>;

/** A number that another bench has learned, of its own jobs alone: no prices, no names, no dates. */
export const SharedNumber = z
  .strictObject({
    about: z.enum(['remedy-chance', 'remedy-time', 'fault-rate', 'reference']),
    of: Id.meta({ description: 'Remedy, fault or point of the model' }),
    mean: z.number().min(-1e9).max(1e9).meta({ description: 'Share, minutes (their middle), or V, Ω, A' }),
    spread: z.number().min(0).max(1e9).default(0).meta({ description: 'Of single values: of the logarithm for minutes, 0 for shares' }),
    jobs: z.number().positive().max(10_000).meta({ description: 'So many jobs, units or boards; faded ones are fractions' }),
  })
  .refine(({ about, mean }) => (about !== 'remedy-chance' && about !== 'fault-rate') || (mean >= 0 && mean <= 1), {
    path: ['mean'],
    error: 'must be a share from 0 to 1',
  })
  .refine(({ about, mean }) => about !== 'remedy-time' || (mean > 0 && mean <= 10_000), {
    path: ['mean'],
    error: 'must be minutes above 0 and not above 10000',
  });
export type SharedNumber = z.infer<typeof SharedNumber>;

export const MeterMode = z.enum(['volts', 'ohms', 'diode', 'amps']);
export type MeterMode = z.infer<typeof MeterMode>;

/** What a seller says of one function or one place. */
export const Claim = z
  .discriminatedUnion('about', [
    z.object({ about: z.literal('function'), function: Id, says: Outcome }),
    z.object({ about: z.literal('place'), place: Id, sees: FindingKind }),
    z.object({ about: z.literal('untested') }),
  ])
  .meta({ id: 'Claim' });
export type Claim = z.infer<typeof Claim>;

export const ItemKind = z.enum(['unit', 'assembly']);
export type ItemKind = z.infer<typeof ItemKind>;

/** A day of the calendar. */
export const Day = z.iso.date('must be a day such as 2026-03-01').meta({ description: 'A day: 2026-03-01' });
export const Share = z.number().min(0, 'must be from 0 to 1').max(1, 'must be from 0 to 1');

export const SaleCondition = z.enum(['A', 'B', 'C', 'D', 'parts']).meta({ description: 'Grade by the scale of the bench, or for parts' });

/** Ways of reckoning that a country may allow. None is on by itself. */
export const TaxRule = z
  .enum(['margin-each', 'margin-together', 'small-trader'])
  .meta({ description: 'Margin scheme thing by thing, or for all of a period together; allowance for small traders' });
export type TaxRule = z.infer<typeof TaxRule>;

export const Caution = z
  .enum(['lithium-cell', 'mains', 'high-voltage', 'hot-tool', 'fumes', 'solvent', 'esd', 'sharp'])
  .meta({ description: 'Danger of the work; its wording is the same wherever it shows' });
export type Caution = z.infer<typeof Caution>;
