import {
  guessColumns,
  mapPlacement,
  mismatches,
  netsOf,
  type ColumnMapping,
  type GuessedColumns,
  type LaidPart,
  type MappingDefaults,
  type TableRow,
} from '../../core/netting/index.ts';
import { readNetlist, componentsOf } from '../../core/circuit/index.ts';
import type { GrownModel } from '../grow/grown-model.ts';
import { packageNames, placementFrom, type Model, type PlacementProblem } from '../models/index.ts';
import { mismatchList } from './check-words.ts';
import { drawnPart, markedPart } from './laid-parts.ts';

/** A part as it would be placed on a model that grows. */
export interface ImportedPart {
  readonly ref: string;
  readonly kind: string;
  readonly value: string;
  readonly package: string;
  readonly side: 'front' | 'back';
  readonly x_mm: number;
  readonly y_mm: number;
  readonly rotation_deg: number;
  readonly block: string;
}

export interface ImportQuestion {
  readonly model: Model;
  readonly grown: GrownModel;
  readonly lines: readonly TableRow[];
  /** As the person corrected it; without one the guess counts. */
  readonly mapping?: ColumnMapping;
  readonly backIsMirrored: boolean;
}

export interface PlacementImport {
  readonly guess: GuessedColumns;
  readonly mapping: ColumnMapping;
  readonly parts: readonly ImportedPart[];
  readonly problems: readonly PlacementProblem[];
  /** Where the table does not go together with the netlist and with what is marked already. */
  readonly mismatches: readonly { readonly text: string; readonly mends: readonly string[] }[];
}

/** Kinds of marks by the letters of a reference (IEEE 315, from memory). */
const KINDS: Readonly<Record<string, string>> = {
  R: 'resistor',
  RN: 'resistor',
  C: 'capacitor',
  L: 'inductor',
  FB: 'inductor',
  D: 'diode',
  LED: 'light',
  Q: 'transistor',
  U: 'chip',
  IC: 'chip',
  X: 'crystal',
  Y: 'crystal',
  F: 'fuse',
  S: 'switch',
  SW: 'switch',
  K: 'switch',
  J: 'connector',
  P: 'connector',
  CN: 'connector',
  TP: 'test-point',
  H: 'hole',
  MH: 'hole',
};

/** A foreign table of places held against a model: which column is what, the parts that it places, and what does not go together. Nothing is taken over. */
export function importPlacement({ model, grown, lines, mapping: given, backIsMirrored }: ImportQuestion): PlacementImport {
  const guess = guessColumns(lines.map(({ cells }) => cells));
  const mapping = given ?? guess.mapping;
  const { file } = model;
  const fallBack = file.blocks.find(({ assembly }) => assembly === 'board')?.id ?? file.blocks[0]!.id;
  const defaults: MappingDefaults = {
    blockOf: (ref) => grown.parts.get(ref)?.block ?? fallBack,
    packages: packageNames().filter((name) => !name.endsWith('-n')),
    backIsMirrored,
    boardWidthMm: file.board?.width_mm ?? 0,
  };
  const { rows } = mapPlacement(lines, mapping, defaults);
  const { placed, problems } = placementFrom(rows, file, false);
  const parts = placed.flatMap(({ side, ref, x, y, rotation, value, package: name, block }): ImportedPart[] =>
    side === 'off' ? [] : [{ ref, kind: kindOf(ref), value, package: name, side, x_mm: x, y_mm: y, rotation_deg: rotation, block }],
  );
  return { guess, mapping, parts, problems, mismatches: found(grown, parts) };
}

const kindOf = (ref: string): string => KINDS[/^[A-Za-z]+/.exec(ref)?.[0].toUpperCase() ?? ''] ?? 'other';

function found(grown: GrownModel, parts: readonly ImportedPart[]): PlacementImport['mismatches'] {
  const read = grown.netlist ? readNetlist(grown.netlist.text) : null;
  const nets = netsOf(grown.joins, grown.names);
  const marked = [...grown.parts.values()].map((part) => markedPart(part, nets.nodeOf));
  const placement = parts.map(({ ref, kind, side, x_mm, y_mm }): LaidPart => ({
    ref,
    side,
    xMm: x_mm,
    yMm: y_mm,
    value: null,
    nodes: [],
    isBare: isBare(kind),
  }));
  return mismatchList(
    mismatches({
      netlist: read?.ok ? componentsOf(read.netlist).map(drawnPart) : null,
      placement,
      picture: marked.length > 0 ? marked : null,
      measured: [],
      apart: [],
    }),
  );
}

const isBare = (kind: string): boolean => kind === 'test-point' || kind === 'hole';
