import { join } from 'node:path';
import {
  modelCircuit,
  type CircuitProblems,
  type CircuitSpec,
  type ModelCircuit,
  type ModelFile,
  type ModelProblem,
} from '../../bench/models/index.ts';
import { readCsv } from './read-csv.ts';
import { readText } from './read-text.ts';

/** What is wrong with the netlist or the placement of a model. */
export interface CircuitFileProblem {
  readonly ok: false;
  readonly code: ModelProblem['code'];
  /** Its name below the folder of the model. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly field: string;
  readonly message: string;
  readonly next: string;
}

export type LoadedCircuit =
  | { readonly ok: true; readonly circuit: ModelCircuit }
  | { readonly ok: false; readonly problems: readonly CircuitFileProblem[]; readonly inModelFile: readonly ModelProblem[] };

/** The circuit of one model from the two files that its section `circuit` names, or all that is wrong with them and with that section. */
export async function loadCircuit(folder: string, file: ModelFile, spec: CircuitSpec): Promise<LoadedCircuit> {
  const [netlist, placement] = [await readText(join(folder, spec.netlist)), await readText(join(folder, spec.placement))];
  if (!netlist.ok || !placement.ok) {
    const unread = [
      ...(netlist.ok ? [] : [unreadable(spec.netlist, netlist)]),
      ...(placement.ok ? [] : [unreadable(spec.placement, placement)]),
    ];
    return { ok: false, problems: unread, inModelFile: [] };
  }
  const result = modelCircuit(file, spec, netlist.text, readCsv(placement.text));
  if (result.ok) return result;
  return { ok: false, problems: inFiles(result.problems, spec), inModelFile: result.problems.model };
}

const unreadable = (file: string, { code, why }: { code: CircuitFileProblem['code']; why: string }): CircuitFileProblem => ({
  ok: false,
  code,
  file,
  line: 1,
  column: 1,
  field: 'the file',
  message: `cannot be read (${why})`,
  next: 'Save it beside the model file as plain UTF-8 text of at most 2 MiB, or correct its name in the section `circuit`.',
});

function inFiles({ netlist, placement }: CircuitProblems, spec: CircuitSpec): CircuitFileProblem[] {
  return [
    ...netlist.map(({ line, column, message }) => ({
      ok: false as const,
      code: 'model-netlist' as const,
      file: spec.netlist,
      line,
      column,
      field: 'the netlist',
      message: `is not right here: ${message}`,
      next: 'Correct the line; docs/netlist-format.md says how each part is written.',
    })),
    ...placement.map((each) => ({ ...each, file: spec.placement, column: 1 })),
  ];
}
