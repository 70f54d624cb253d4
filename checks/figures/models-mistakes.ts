import { boardPoints } from '../../src/bench/boards/board-points.ts';
import { lookAt } from '../../src/bench/boards/look.ts';
import { simulateLooks } from '../../src/bench/boards/simulate-looks.ts';
import { findMistakes, type FoundMistakes, type KnownGood } from '../../src/bench/netting/index.ts';
import { floorOf, type Model } from '../../src/bench/models/index.ts';
import { compileCircuit, componentsOf, drawBoards, type Component, type Netlist, type Part } from '../../src/core/circuit/index.ts';
import { median, medianDeviation, randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { level2Models } from '../models/level-2-board.ts';
import { shownBy } from './diagnosis-sessions.ts';
import { round, type Figure, type Progress } from './figure.ts';

const SEED = 'netlists never looked at: one mistake each';
const CASES = 100;
const GOOD_BOARDS = 3;
const KINDS = ['swapped-pins', 'wrong-value', 'missing-part'] as const;
type Kind = (typeof KINDS)[number];

/** A netlist with one mistake, and the nets at which it is. */
interface Wrong {
  readonly kind: Kind;
  readonly netlist: Netlist;
  readonly nets: readonly string[];
}

interface Case extends Wrong {
  /** Place of the first right net among those named, from 0; −1 for none. */
  readonly rank: number;
}

/** How often the check of a model names the net at which its netlist is wrong: one seeded mistake each, known-good readings of three boards. */
export async function mistakeFigure(progress: Progress, count = CASES, seed = SEED): Promise<Figure> {
  const model = (await level2Models()).get('tern-tn20')!;
  progress(`Reading ${GOOD_BOARDS} good boards, and ${count} netlists with a mistake …`);
  const known = goodReadings(model, `good boards of ${seed}`);
  const random = randomStream(seed);
  const cases: Case[] = [];
  let unseen = 0;
  while (cases.length < count) {
    const wrong = withMistake(model, KINDS[cases.length % KINDS.length]!, random);
    const found = wrong && check(model, wrong, known);
    if (!wrong || !found) continue;
    if (found.odd.length === 0) unseen++;
    else cases.push({ ...wrong, rank: found.nets.findIndex(({ net }) => wrong.nets.includes(net)) });
  }
  return figureOf(cases, unseen, known.length);
}

function figureOf(cases: readonly Case[], unseen: number, readings: number): Figure {
  const inTop = (some: readonly Case[], most: number): number =>
    round(some.filter(({ rank }) => rank >= 0 && rank < most).length / some.length);
  const byKind = KINDS.map((kind) => {
    const own = cases.filter((each) => each.kind === kind);
    return `${kind.replace('-', ' ')} ${inTop(own, 3)}`;
  });
  return {
    figure: 'models.mistake_top3',
    value: inTop(cases, 3),
    unit: '',
    target: '≥ 0.7',
    reference: `${cases.length} netlists of the Tern TN-20 with one mistake that shows in ${readings} readings of ${GOOD_BOARDS} good boards, ${unseen} more did not show; ${byKind.join(', ')}; the first named is right in ${inTop(cases, 1)}; a rail or ground counts only where the part is at no other net`,
  };
}

/** What a walk over every net of good boards wrote down, with the least that boards differ by. */
function goodReadings(model: Model, seed: string): KnownGood[] {
  const circuit = compileCircuit(model.circuit!.netlist);
  const points = boardPoints(model).filter(({ held }) => held === undefined);
  const looks = points.map((point) => lookAt(point, model.circuit!));
  const draws = drawBoards(model.circuit!.netlist, GOOD_BOARDS, randomStream(seed));
  const values = simulateLooks({ model, circuit, draws }, [[]], looks);
  const random = randomStream(`meter of ${seed}`);
  return points.flatMap((point, p): KnownGood[] => {
    const read = draws.map((_, d) => values[d * points.length + p]!).filter((value) => !Number.isNaN(value));
    const shown = read.map((value) => shownBy(point.mode, value, random));
    const numbers = shown.filter((value) => value !== null);
    if (read.length === 0) return [];
    if (numbers.length * 2 <= shown.length) return [{ point, mean: null, spread: 0 }];
    const mean = median(numbers);
    return [{ point, mean, spread: Math.max(medianDeviation(numbers), floorOf(point.mode, mean, numbers.length)) }];
  });
}

/** Null where the mistake leaves nothing that can be held against the readings. */
function check(model: Model, { netlist }: Wrong, known: readonly KnownGood[]): FoundMistakes | null {
  const nodes = new Set(['0', ...netlist.nodes]);
  const wrong: Model = { ...model, circuit: { ...model.circuit!, netlist } };
  return findMistakes(
    wrong,
    known.filter(({ point }) => nodes.has(point.red) && nodes.has(point.black)),
  );
}

const pick = <T>(list: readonly T[], random: RandomStream): T => list[Math.floor(random() * list.length)]!;

function withMistake(model: Model, kind: Kind, random: RandomStream): Wrong | null {
  const { netlist, parts } = model.circuit!;
  const off = new Set(parts.filter(({ side }) => side === 'off').map(({ ref }) => ref.toLowerCase()));
  const components = componentsOf(netlist).filter(({ ref, parts: own }) => !off.has(ref) && own.every(({ kind: each }) => each !== 'V'));
  if (kind === 'swapped-pins') return swapped(model, pick(components.filter(canSwap), random), random);
  const single = components.flatMap((component) => component.parts.filter(({ name, kind: each }) => !name.includes('.') && each !== 'C'));
  if (kind === 'missing-part') {
    const part = pick(single, random);
    return wrongAt(model, kind, part.nodes, (all) => all.filter((each) => each !== part));
  }
  const part = pick(
    single.filter(({ kind: each }) => each === 'R'),
    random,
  );
  const factor = Math.exp(Math.log(1.8) + random() * Math.log(30 / 1.8)) ** (random() < 0.5 ? 1 : -1);
  return wrongAt(model, kind, part.nodes, (all) => all.map((each) => (each === part ? { ...each, value: each.value * factor } : each)));
}

const canSwap = ({ parts, nets }: Component): boolean =>
  parts[0]!.kind !== 'R' && parts[0]!.kind !== 'C' && parts[0]!.kind !== 'L' ? nets.length > 1 : parts.length > 1 && nets.length > 2;

/** Two nets of a component exchanged in the drawing. */
function swapped(model: Model, { parts, nets }: Component, random: RandomStream): Wrong | null {
  const a = pick(nets, random);
  const b = pick(nets, random);
  if (a === b) return null;
  const turned = (part: Part): Part => ({ ...part, nodes: part.nodes.map((node) => (node === a ? b : node === b ? a : node)) });
  return wrongAt(model, 'swapped-pins', [a, b], (all) => all.map((each) => (parts.includes(each) ? turned(each) : each)));
}

function wrongAt(model: Model, kind: Kind, nodes: readonly string[], change: (parts: readonly Part[]) => readonly Part[]): Wrong {
  const { netlist } = model.circuit!;
  const rails = new Set(['0', ...Object.keys(model.file.circuit!.rails)]);
  const own = nodes.filter((node) => !rails.has(node));
  const parts = change(netlist.parts);
  const left = new Set(parts.flatMap((part) => part.nodes));
  const nets = own.length > 0 ? own : nodes.filter((node) => node !== '0');
  return { kind, netlist: { ...netlist, parts, nodes: netlist.nodes.filter((node) => left.has(node)) }, nets };
}
