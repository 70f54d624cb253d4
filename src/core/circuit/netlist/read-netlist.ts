import { readCards } from './cards.ts';
import { readDeck, splitPairs, type Deck } from './deck.ts';
import { BEHAVIOURS, readBehaviour, readPart, type LocalPart } from './read-part.ts';
import { enterDeck, findDeck, valueOf, type Scoped } from './scope.ts';
import { mistake, NetlistMistake, type BehaviourKind, type Card, type NetlistProblem, type NetlistResult, type Part } from './types.ts';

/** Parts after unfolding: a bound against text that unfolds without end. */
const MAX_PARTS = 20_000;
const MAX_DEPTH = 20;

/**
 * Reads a netlist in the SPICE notation and unfolds its subcircuits. The first line is the title. What is read: R C L V I D Q M E G F H S W X,
 * .model, .subckt/.ends, .param, .temp; analysis cards are noted and skipped. Mistakes come back with line and column, all that can be found in
 * one reading. Ground is node 0 or gnd.
 */
export function readNetlist(text: string): NetlistResult {
  const problems: NetlistProblem[] = [];
  try {
    const { title, cards } = readCards(text);
    const deck = readDeck(cards);
    const unfolding = new Unfolding(problems);
    const scope = enterDeck(deck, undefined, new Map());
    unfolding.unfold(scope, '', new Map(), 0);
    checkControls(unfolding.parts, problems);
    checkBranches(unfolding.parts, problems);
    if (problems.length > 0) return { ok: false, code: 'netlist', problems };
    const temperatureK = 273.15 + (deck.temperatureC ? valueOf(deck.temperatureC, scope.params) : 27);
    return { ok: true, netlist: { title, parts: unfolding.parts, nodes: nodesOf(unfolding.parts), temperatureK, notes: notesOf(deck) } };
  } catch (error) {
    if (!(error instanceof NetlistMistake)) throw error;
    return { ok: false, code: 'netlist', problems: [...problems, error.problem] };
  }
}

class Unfolding {
  readonly parts: Part[] = [];
  private readonly names = new Set<string>();

  constructor(private readonly problems: NetlistProblem[]) {}

  /** Adds the parts of one deck; `outside` maps its ports to the nodes that they are joined to. */
  unfold(scope: Scoped, path: string, outside: ReadonlyMap<string, string>, depth: number): void {
    for (const card of scope.deck.elements) {
      try {
        this.element(card, scope, path, outside, depth);
      } catch (error) {
        if (!(error instanceof NetlistMistake) || error.problem.code === 'too-large') throw error;
        this.problems.push(error.problem);
      }
    }
  }

  private element(card: Card, scope: Scoped, path: string, outside: ReadonlyMap<string, string>, depth: number): void {
    if (/^x/i.test(card.tokens[0]!.text)) this.call(card, scope, path, outside, depth);
    else this.add(readPart(card, scope), path, outside);
  }

  private call(card: Card, scope: Scoped, path: string, outside: ReadonlyMap<string, string>, depth: number): void {
    const head = card.tokens[0]!;
    const { words, pairs } = splitPairs(card.tokens.slice(1));
    const name = words.pop();
    if (!name) throw mistake(head, 'syntax', `${head.text} names no subcircuit`);
    const found = findDeck(name.text.toLowerCase(), scope);
    const behaviour = name.text.toUpperCase();
    if (!found && Object.hasOwn(BEHAVIOURS, behaviour))
      return this.add(readBehaviour(behaviour as BehaviourKind, head, words, pairs, scope), path, outside);
    if (!found)
      throw mistake(
        name,
        'unknown-name',
        `no .subckt is called "${name.text}"; the behavioural parts are ${Object.keys(BEHAVIOURS).join(', ')}`,
      );
    const { ports } = found.deck;
    if (ports.length !== words.length)
      throw mistake(
        head,
        'nodes',
        `"${name.text}" has ${ports.length} nodes (${ports.join(' ')}), but ${head.text} gives it ${words.length}`,
      );
    if (depth >= MAX_DEPTH)
      throw mistake(head, 'too-large', `subcircuits are nested more than ${MAX_DEPTH} deep; does "${name.text}" call itself?`);
    const given = new Map([...pairs].map(([key, token]) => [key, valueOf(token, scope.params)]));
    const joined = new Map(ports.map((port, i) => [port, globalNode(words[i]!.text.toLowerCase(), path, outside)]));
    this.claim(path + head.text, head);
    this.unfold(enterDeck(found.deck, found.home, given), `${path}${head.text}.`, joined, depth + 1);
  }

  private add(local: LocalPart, path: string, outside: ReadonlyMap<string, string>): void {
    if (this.parts.length >= MAX_PARTS) throw mistake(local, 'too-large', `the netlist unfolds to more than ${MAX_PARTS} parts`);
    this.claim(path + local.label, local);
    const { label, ...rest } = local;
    const nodes = local.nodes.map((node) => globalNode(node, path, outside));
    this.parts.push({ ...rest, name: path + label, nodes, control: local.control === '' ? '' : path.toLowerCase() + local.control });
  }

  private claim(name: string, at: { line: number; column: number }): void {
    const key = name.toLowerCase();
    if (this.names.has(key)) throw mistake(at, 'duplicate', `there are two parts called ${name}`);
    this.names.add(key);
  }
}

function globalNode(node: string, path: string, outside: ReadonlyMap<string, string>): string {
  if (node === '0' || node === 'gnd') return '0';
  return outside.get(node) ?? path.toLowerCase() + node;
}

function checkControls(parts: readonly Part[], problems: NetlistProblem[]): void {
  const sources = new Set(parts.filter((part) => part.kind === 'V').map((part) => part.name.toLowerCase()));
  for (const part of parts) {
    if (part.control === '' || sources.has(part.control)) continue;
    problems.push({
      line: part.line,
      column: part.column,
      code: 'unknown-name',
      message: `${part.name} is controlled by "${part.control}", but there is no such voltage source`,
    });
  }
}

/** A voltage across a node and itself has no solution. */
function checkBranches(parts: readonly Part[], problems: NetlistProblem[]): void {
  for (const { kind, name, nodes, line, column } of parts) {
    if (!'VLEH'.includes(kind) || nodes[0] !== nodes[1]) continue;
    problems.push({
      line,
      column,
      code: 'nodes',
      message: `${name} has both its ends at node ${nodes[0]}; join them to different nodes or leave it out`,
    });
  }
}

const nodesOf = (parts: readonly Part[]): string[] => [...new Set(parts.flatMap((part) => part.nodes))].filter((node) => node !== '0');

const notesOf = (deck: Deck): string[] => [...deck.notes, ...[...deck.decks.values()].flatMap(notesOf)];
