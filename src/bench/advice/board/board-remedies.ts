import { isRegion, type CircuitFaultKind } from '../../../core/circuit/index.ts';
import type { BoardFault, BoardKnowledge } from '../../boards/board-knowledge.ts';
import { remedyBetween, remedyOnNet, remedyOnPart, type PartRemedy } from '../../boards/part-remedies.ts';
import { WORK, type WorkOnParts } from '../../boards/work-on-parts.ts';
import type { Model, ModelFile } from '../../models/index.ts';
import { blocksOfSlot } from '../device-model.ts';

type Spec = ModelFile['remedies'][number];
type StandIns = ReadonlyMap<string, readonly BoardFault[]>;

/** Another assembly is as likely to be well as its donor is; so much of that reaches the faults of its parts. Common practice, no source. */
const OTHER_ASSEMBLY = 0.97;

/** Remedies of the file with what they mend told in faults of the circuit, those on parts that the file leaves out, and all parts that these use up. */
export function boardRemedies(
  model: Model,
  knowledge: BoardKnowledge,
  stands: StandIns,
): { listed: Spec[]; derived: PartRemedy[]; parts: ModelFile['parts'] } {
  const offBoard = blocksOffBoard(model);
  const listed = model.file.remedies.map((spec) => ({ ...spec, mends: mendsOf(model, knowledge, stands, offBoard, spec) }));
  const derived = derivedRemedies(model, knowledge, stands, listed);
  const named = new Set(model.file.parts.map(({ id }) => id));
  const parts = [...model.file.parts];
  for (const { uses } of derived) {
    if (!uses || named.has(uses.id)) continue;
    named.add(uses.id);
    parts.push(uses);
  }
  return { listed, derived, parts };
}

/** Blocks of which no part is on the board: a cell, a charger, a speaker. */
function blocksOffBoard({ circuit }: Model): ReadonlySet<string> {
  const off = new Set(circuit!.parts.filter(({ side }) => side === 'off').map(({ block }) => block));
  for (const { side, block } of circuit!.parts) if (side !== 'off') off.delete(block);
  return off;
}

/** A new part has none of the faults of the old one; another assembly has none of those of its blocks. */
function mendsOf(
  model: Model,
  { faults }: BoardKnowledge,
  stands: StandIns,
  offBoard: ReadonlySet<string>,
  { kind, slot, mends }: Spec,
): Spec['mends'] {
  const result: Record<string, number> = {};
  const mend = (id: string, chance: number): void => void (result[id] = Math.max(result[id] ?? 0, chance));
  for (const [id, chance] of Object.entries(mends)) {
    const own = stands.get(id);
    if (!own) mend(id, chance);
    for (const each of own ?? []) mend(each.id, chance);
    if (kind !== 'replace' && kind !== 'transplant') continue;
    const [ref, ...others] = new Set((own ?? []).map(({ refs }) => refs[0]));
    const block = model.file.faults.find((fault) => fault.id === id)!.block;
    for (const each of faults)
      if ((ref !== undefined && others.length === 0 && each.refs[0] === ref) || (offBoard.has(block) && each.block === block))
        mend(each.id, chance);
  }
  const blocks = kind === 'transplant' && slot !== undefined ? blocksOfSlot(model.file, slot) : [];
  for (const { id, block } of faults) if (blocks.includes(block)) mend(id, OTHER_ASSEMBLY);
  return result;
}

function derivedRemedies(model: Model, { faults }: BoardKnowledge, stands: StandIns, listed: readonly Spec[]): PartRemedy[] {
  const found = new Map<string, { remedy: PartRemedy; mends: Record<string, number> }>();
  const partOf = partOfEach(listed, faults);
  /** The file has such a remedy for just that part. */
  const isListed = (work: WorkOnParts, fault: BoardFault): boolean =>
    listed.some((spec) => spec.kind === work.kind && partOf.get(spec) === fault.refs[0] && (spec.mends[fault.id] ?? 0) > 0);
  for (const fault of faults) {
    for (const work of WORK) {
      const chance = work.mends[fault.circuit.kind];
      if (chance === undefined || isListed(work, fault) || cannotBeHad(work, fault, stands, listed, model)) continue;
      const remedy = remedyFor(model, work, fault);
      if (!remedy) continue;
      const known = found.get(remedy.spec.id) ?? { remedy, mends: {} };
      known.mends[fault.id] = chance;
      found.set(remedy.spec.id, known);
    }
  }
  const regions = new Set(faults.filter(({ circuit }) => circuit.components.some(isRegion)).map(({ id }) => id));
  /** One part of a net is replaced where it is known; what is not drawn has to be traced. */
  const isTraced = (mends: Record<string, number>): boolean =>
    Object.keys(mends).length > 1 || Object.keys(mends).some((id) => regions.has(id));
  return [...found.values()]
    .filter(({ remedy, mends }) => remedy.work.verb !== 'trace' || isTraced(mends))
    .map(({ remedy, mends }) => ({ ...remedy, spec: { ...remedy.spec, mends } }));
}

/** The net that a fault ties to ground; null when it does not. */
function pulledDown({ circuit }: Model, { changes }: BoardFault['circuit']): string | null {
  for (const change of changes) {
    if (change.does !== 'bridge' && change.does !== 'join') continue;
    const [a, b] =
      change.does === 'join' ? change.nodes : (circuit!.netlist.parts.find(({ name }) => name.toLowerCase() === change.part)?.nodes ?? []);
    if (a === '0' && b !== undefined && b !== '0') return b;
    if (b === '0' && a !== undefined) return a;
  }
  return null;
}

const BETWEEN_NETS: ReadonlySet<CircuitFaultKind> = new Set(['bridge', 'liquid-leak']);

function remedyFor(model: Model, { verb }: WorkOnParts, { circuit, refs, nets }: BoardFault): PartRemedy | null {
  if (verb === 'trace') {
    const net = pulledDown(model, circuit);
    return net === null ? null : remedyOnNet(model, net);
  }
  if (verb === 'clear' || verb === 'wash') return nets.length === 2 ? remedyBetween(model, verb, [nets[0]!, nets[1]!]) : null;
  return refs[0] === undefined || BETWEEN_NETS.has(circuit.kind) ? null : remedyOnPart(model, verb, refs[0]);
}

/** By remedy of the file, the one part that all faults of the circuit which it mends are of; null where they are of several. */
function partOfEach(listed: readonly Spec[], faults: readonly BoardFault[]): ReadonlyMap<Spec, string | null> {
  const partOf = new Map(faults.map(({ id, refs }) => [id, refs[0]]));
  return new Map(
    listed.map((spec) => {
      const refs = new Set(Object.keys(spec.mends).flatMap((id) => partOf.get(id) ?? []));
      return [spec, refs.size === 1 ? [...refs][0]! : null];
    }),
  );
}

/** The file knows that the part dies and lists nothing against it but another assembly: then there is no such part to buy. */
function cannotBeHad({ verb }: WorkOnParts, fault: BoardFault, stands: StandIns, listed: readonly Spec[], { file }: Model): boolean {
  if (verb !== 'replace') return false;
  const deaths = file.faults.filter(
    ({ id, mode }) => mode === 'dead' && (stands.get(id) ?? []).some(({ refs }) => refs[0] === fault.refs[0]),
  );
  return deaths.some(({ id }) =>
    (stands.get(id) ?? []).every((each) => listed.every(({ kind, mends }) => kind === 'transplant' || (mends[each.id] ?? 0) === 0)),
  );
}
