import { z } from 'zod';
import { MarkedPart } from '../events/index.ts';

const Columns = z
  .partialRecord(z.enum(['ref', 'x', 'y', 'rotation', 'side', 'value', 'package', 'block', 'nets']), z.int().min(0).max(200))
  .meta({ description: 'Column by field, from 0' });
const Unit = z.enum(['mm', 'um', 'mil', 'inch']);
const MOST_CHARACTERS = 5_000_000;

/** A table of places from any program, to be held against a model. */
export const PlacementQuestion = z
  .object({
    text: z.string().max(MOST_CHARACTERS).meta({ description: 'The table as CSV' }),
    mapping: z
      .object({ columns: Columns, header_rows: z.int().min(0).max(100), unit: Unit })
      .optional()
      .meta({ description: 'Which column is what, as the person corrected it; without it that is guessed' }),
    back_is_mirrored: z.boolean().default(false).meta({ description: 'The back is counted as one looks at the back' }),
  })
  .meta({ id: 'PlacementQuestion' });
export type PlacementQuestion = z.infer<typeof PlacementQuestion>;

export const PlacementImportView = z
  .object({
    mapping: z.object({ columns: Columns, header_rows: z.int(), unit: Unit }),
    told: z
      .partialRecord(z.string(), z.enum(['name', 'content']))
      .meta({ description: 'By field, whether the name of the column told it or what stands in it' }),
    table: z.array(z.array(z.string())).meta({ description: 'The first rows, cell by cell' }),
    parts: z.array(MarkedPart).meta({ description: 'The parts that it places: the body of `model-parts-placed`' }),
    problems: z.array(z.object({ line: z.int(), field: z.string(), message: z.string(), next: z.string() })),
    mismatches: z.array(z.object({ text: z.string(), mends: z.array(z.string()) })),
  })
  .meta({ id: 'PlacementImport' });
export type PlacementImportView = z.infer<typeof PlacementImportView>;
