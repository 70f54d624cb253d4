import type { TableRow } from '../../core/netting/index.ts';
import { MarkedPart } from '../events/index.ts';
import type { GrownModel } from '../grow/grown-model.ts';
import type { Model } from '../models/index.ts';
import type { PlacementImportView, PlacementQuestion } from '../views/index.ts';
import { importPlacement } from './import-placement.ts';

const SHOWN_ROWS = 5;
const MOST_PROBLEMS = 20;

/** A table of places held against a model that grows, as an answer; `lines` are those of the text of the question. */
export function placementView(
  model: Model,
  grown: GrownModel,
  { mapping, back_is_mirrored: backIsMirrored }: Omit<PlacementQuestion, 'text'>,
  lines: readonly TableRow[],
): PlacementImportView {
  const given = mapping && { mapping: { columns: mapping.columns, headerRows: mapping.header_rows, unit: mapping.unit } };
  const found = importPlacement({ model, grown, lines, backIsMirrored, ...given });
  const { columns, headerRows, unit } = found.mapping;
  return {
    mapping: { columns: { ...columns }, header_rows: headerRows, unit },
    told: { ...found.guess.told },
    table: lines.slice(0, headerRows + SHOWN_ROWS).map(({ cells }) => [...cells]),
    parts: found.parts.map((part) => MarkedPart.parse(part)),
    problems: found.problems.slice(0, MOST_PROBLEMS).map(({ line, field, message, next }) => ({ line, field, message, next })),
    mismatches: found.mismatches.map(({ text, mends }) => ({ text, mends: [...mends] })),
  };
}
