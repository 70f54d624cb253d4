import { modelCircuit, type CsvRow, type Model, type ModelFile } from '../models/index.ts';
import type { GrownModel, GrownPart } from './grown-model.ts';

/** Kinds of marks that are no parts of a circuit. */
const NO_PART: ReadonlySet<string> = new Set(['hole']);
const HEADER = ['ref', 'x', 'y', 'rotation', 'side', 'value', 'package', 'block'];
const MOST_PROBLEMS = 20;

/**
 * The circuit of a grown model: of its own netlist and marked parts where it has a netlist, else the inherited one, as long as the file says what hangs on
 * it. What keeps an own netlist from being used is told as clauses.
 */
export function grownCircuit(
  grown: GrownModel,
  file: ModelFile,
  inherited: Model['circuit'],
): { readonly circuit: Model['circuit']; readonly problems: readonly string[] } {
  if (!file.circuit) return { circuit: undefined, problems: [] };
  if (!grown.netlist) return { circuit: inherited, problems: [] };
  const result = modelCircuit(file, file.circuit, grown.netlist.text, { rows: placementRows(grown), commaIsDecimal: false });
  if (result.ok) return { circuit: result.circuit, problems: [] };
  const { netlist, placement, model } = result.problems;
  const clauses = [
    ...netlist.map(({ line, message }) => `line ${line} of the netlist: ${message}`),
    ...placement.map(({ line, field, message }) => `${grownRef(grown, line)}, ${field}: ${message}`),
    ...model.map(({ path, message }) => `${path.join('.')} ${message}`),
  ];
  return { circuit: undefined, problems: clauses.slice(0, MOST_PROBLEMS) };
}

/** Marked parts as rows of a placement file, the header first. */
export const placementRows = ({ parts }: GrownModel): CsvRow[] => [
  { line: 1, cells: HEADER },
  ...partsOf(parts).map((part, index) => ({ line: index + 2, cells: rowOf(part) })),
];

const partsOf = (parts: GrownModel['parts']): GrownPart[] => [...parts.values()].filter(({ kind }) => !NO_PART.has(kind));

const grownRef = ({ parts }: GrownModel, line: number): string => partsOf(parts)[line - 2]?.ref ?? 'the placement';

const rowOf = ({ ref, x_mm, y_mm, rotation_deg, side, value, package: name, block }: GrownPart): string[] => [
  ref,
  number(x_mm),
  number(y_mm),
  number(rotation_deg),
  side,
  value,
  name,
  block ?? '',
];

const number = (value: number): string => String(Number(value.toFixed(4)));
