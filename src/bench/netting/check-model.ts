import { componentsOf, isRegion, readNetlist } from '../../core/circuit/index.ts';
import { groupOfRows } from '../../core/diagnosis/readings/index.ts';
import type { Stakes } from '../../core/diagnosis/model.ts';
import { mismatches, netsOf } from '../../core/netting/index.ts';
import type { Boards } from '../boards/board-knowledge.ts';
import type { GrownModel } from '../grow/grown-model.ts';
import type { Model } from '../models/index.ts';
import type { ModelCheckView } from '../views/index.ts';
import { contradictionWords, mismatchList, mistakeWords } from './check-words.ts';
import { MistakeSearch, type FoundMistakes } from './find-mistakes.ts';
import { drawnPart, markedPart } from './laid-parts.ts';
import { mostNeeding, usefulPoints } from './useful-points.ts';

export interface CheckQuestion {
  readonly model: Model;
  /** What was measured, named and marked, of a model that grew here. */
  readonly grown: GrownModel | null;
  /** What keeps its netlist, or a part of it, from being used. */
  readonly problems: readonly string[];
  readonly boards: Boards | undefined;
  readonly hourMinor: number;
  readonly shouldStop: () => boolean;
}

const MOST_GROUPS = 6;
const MOST_NETS = 6;
const MOST_ODD = 20;
/** Less likely than this a net is not named. */
const LEAST_CHANCE = 0.005;

/** What a model can and cannot do now, what would help most to add, and what in it cannot be true at once with the likeliest mistake. */
export function checkModel({ model, grown, problems, boards, hourMinor, shouldStop }: CheckQuestion): ModelCheckView {
  const { file } = model;
  const found = model.circuit && file.circuit ? searchOf(model).run(shouldStop) : null;
  return {
    model_id: file.id,
    name: file.name,
    level: file.level,
    functions: file.functions.map(({ id, name }) => ({ id, name, by: file.circuit?.functions[id] ? 'circuit' : 'blocks' })),
    faults: faultsOf(model, boards),
    points: usefulPoints(model, boards, stakesOf(model, hourMinor)).map(({ savingMinor, bits, minutes, ...point }) => ({
      ...point,
      minutes: Number(minutes.toFixed(1)),
      saving_minor: Math.round(savingMinor),
      bits: Number(bits.toFixed(2)),
    })),
    points_for: mostNeeding(model)?.name ?? null,
    currency: file.currency,
    unknown_loads: unknownLoads(model),
    ...(found ? readingsOf(found) : { compared: 0, odd: [], mistakes: [], thought: 0, to_think: 0 }),
    ...(grown ? disagreements(grown) : { contradictions: [], mismatches: [] }),
    problems: [...problems],
  };
}

const searches = new WeakMap<Model, MistakeSearch>();

/** The search of a model goes on from one question to the next. */
function searchOf(model: Model): MistakeSearch {
  const known = searches.get(model);
  if (known) return known;
  const search = new MistakeSearch(model);
  searches.set(model, search);
  return search;
}

const stakesOf = ({ file }: Model, hourMinor: number): Stakes => ({
  workingMinor: file.prices.working,
  asIsMinor: file.prices.for_parts,
  hourMinor,
  openingMinutes: { open: file.opening_minutes.open, 'board-out': file.opening_minutes.board_out },
  stage: 'board-out',
});

/** Faults and the groups of them that some check tells apart: by the circuit once that is computed, else those of one block that move and show the same. */
function faultsOf(model: Model, boards: Boards | undefined): ModelCheckView['faults'] {
  if (model.circuit && boards) {
    const knowledge = boards.knowledge(model, []);
    if (!knowledge || knowledge.done < knowledge.rows) return null;
    const groups = groupOfRows(knowledge.baseline);
    return inGroups(
      'circuit',
      knowledge.faults.map(({ name }, i) => ({ name, group: String(groups[i + 1]) })),
    );
  }
  const alike = model.file.faults.map(({ name, block, shifts, seen, behaves }) => ({
    name,
    group: JSON.stringify([block, shifts, seen, behaves]),
  }));
  return inGroups('blocks', alike);
}

function inGroups(
  by: 'circuit' | 'blocks',
  faults: readonly { readonly name: string; readonly group: string }[],
): ModelCheckView['faults'] {
  const groups = new Map<string, string[]>();
  for (const { name, group } of faults) groups.set(group, [...(groups.get(group) ?? []), name]);
  const largest = [...groups.values()]
    .filter(({ length }) => length > 1)
    .sort((a, b) => b.length - a.length)
    .slice(0, MOST_GROUPS)
    .map(([name, ...others]) => ({ name: name!, others: others.length }));
  return { by, count: faults.length, groups: groups.size, largest };
}

function unknownLoads({ circuit, file }: Model): ModelCheckView['unknown_loads'] {
  if (!circuit) return [];
  return componentsOf(circuit.netlist).flatMap(({ ref, parts }) => {
    const rail = parts[0]!.nodes[0]!;
    return isRegion(ref) ? [{ rail, volts: file.circuit?.rails[rail] ?? 0 }] : [];
  });
}

function readingsOf({
  compared,
  odd,
  nets,
  thought,
  toThink,
}: FoundMistakes): Pick<ModelCheckView, 'compared' | 'odd' | 'mistakes' | 'thought' | 'to_think'> {
  return {
    compared,
    thought,
    to_think: toThink,
    odd: odd.slice(0, MOST_ODD).map(({ point, mean, spread, predicted, spreads }) => ({
      point: point.id,
      name: point.name,
      mode: point.mode,
      read: mean,
      spread,
      predicted: predicted === null ? null : Number(predicted.toPrecision(4)),
      spreads: Number.isFinite(spreads) ? Number(spreads.toPrecision(2)) : null,
    })),
    mistakes: nets
      .slice(0, MOST_NETS)
      .filter(({ chance }) => chance >= LEAST_CHANCE)
      .map(({ net, chance, best }) => ({
        net,
        chance: Number(chance.toFixed(3)),
        ...mistakeWords(best.edit.mistake),
        explains: best.explains.length,
        spoils: best.spoils.length,
      })),
  };
}

/** Where what was measured, named, marked and drawn of a grown model does not go together. */
function disagreements({ joins, names, parts, netlist }: GrownModel): Pick<ModelCheckView, 'contradictions' | 'mismatches'> {
  const nets = netsOf(joins, names);
  const read = netlist ? readNetlist(netlist.text) : null;
  const marked = [...parts.values()].map((part) => markedPart(part, nets.nodeOf));
  const found = mismatches({
    netlist: read?.ok ? componentsOf(read.netlist).map(drawnPart) : null,
    placement: null,
    picture: marked.length > 0 ? marked : null,
    measured: nets.nets,
    apart: joins.flatMap(({ joined, pins: [first, ...others] }) => (joined ? [] : others.map((other) => [first!, other] as const))),
  });
  const pinsOf = (join: number): string => joins[join]!.pins.join(' and ');
  return {
    contradictions: nets.contradictions.map((each) => contradictionWords(each, pinsOf)),
    mismatches: mismatchList(found).map(({ text, mends }) => ({ text, mends: [...mends] })),
  };
}
