import { readNetName, type NetName } from './net-names.ts';

/** What a meter said of pins: all of them are one net, or the first is joined to none of the others. A pin is `U1.3`. */
export interface PinsJoined {
  readonly pins: readonly string[];
  readonly joined: boolean;
}

/** A name that a person gave to the net of a pin. */
export interface PinNamed {
  readonly pin: string;
  readonly name: string;
}

export interface Net {
  /** Node of the netlist: as named, else made of its first pin. */
  readonly node: string;
  readonly kind: NetName['kind'];
  readonly isNamed: boolean;
  /** In order of their names. */
  readonly pins: readonly string[];
}

/** One step of a chain that makes two pins one net: a measurement by its place in the list, or the same name given twice. */
export type Link = { readonly join: number } | { readonly name: string };

/**
 * What cannot be true at once. `through` is the shortest chain that joins what should be apart: one of its links, or the measurement against it, is wrong.
 */
export type Contradiction =
  | {
      readonly code: 'measured-apart';
      readonly pins: readonly [string, string];
      readonly node: string;
      readonly apart: number;
      readonly through: readonly Link[];
    }
  | {
      readonly code: 'supplies-joined' | 'two-names';
      readonly pins: readonly [string, string];
      readonly node: string;
      readonly names: readonly [string, string];
      readonly through: readonly Link[];
    };

export interface Nets {
  readonly nets: readonly Net[];
  /** Node by pin, of every pin that was spoken of. */
  readonly nodeOf: ReadonlyMap<string, string>;
  readonly contradictions: readonly Contradiction[];
}

interface Edge {
  readonly to: string;
  readonly link: Link;
}

/**
 * Nets from what was measured and named. Of two pins the last measurement counts, of a pin its last name; pins whose names mean the same node are one net.
 * A pin that was only measured as not joined is a net of its own. Contradictions are told and change nothing: the nets are those of the joins. A name
 * that says nothing is passed over.
 */
export function netsOf(joins: readonly PinsJoined[], names: readonly PinNamed[] = []): Nets {
  const graph = new Graph();
  const apart: { readonly pins: readonly [string, string]; readonly at: number }[] = [];
  for (const { a, b, joined, at } of lastOfEachPair(joins)) {
    graph.add(a);
    graph.add(b);
    if (joined) graph.join(a, b, { join: at });
    else apart.push({ pins: [a, b], at });
  }
  const named = lastNames(names);
  for (const pin of named.keys()) graph.add(pin);
  const firstOf = new Map<string, string>();
  for (const [pin, { node }] of named) {
    const first = firstOf.get(node);
    if (first === undefined) firstOf.set(node, pin);
    else graph.join(first, pin, { name: node });
  }
  const groups = graph.groups();
  const nets = namedNets(groups, named);
  const nodeOf = new Map(nets.flatMap(({ node, pins }) => pins.map((pin) => [pin, node] as const)));
  const contradictions = [...apartButJoined(apart, nodeOf, graph), ...clashingNames(nets, named, graph)];
  return { nets, nodeOf, contradictions };
}

/** Each pair of pins once, with what was said of it last. */
function lastOfEachPair(joins: readonly PinsJoined[]): { a: string; b: string; joined: boolean; at: number }[] {
  const last = new Map<string, { a: string; b: string; joined: boolean; at: number }>();
  joins.forEach(({ pins: [first, ...others], joined }, at) => {
    for (const other of others) {
      if (first === undefined || other === first) continue;
      const [a, b] = first < other ? [first, other] : [other, first];
      last.set(`${a} ${b}`, { a, b, joined, at });
    }
  });
  return [...last.values()];
}

function lastNames(names: readonly PinNamed[]): Map<string, NetName> {
  const last = new Map<string, NetName>();
  for (const { pin, name } of names) {
    const read = readNetName(name);
    if (read) last.set(pin, read);
  }
  return last;
}

/** Pins as points, joins as lines between them. */
class Graph {
  private readonly edges = new Map<string, Edge[]>();

  add(pin: string): void {
    if (!this.edges.has(pin)) this.edges.set(pin, []);
  }

  join(a: string, b: string, link: Link): void {
    this.edges.get(a)!.push({ to: b, link });
    this.edges.get(b)!.push({ to: a, link });
  }

  groups(): string[][] {
    const seen = new Set<string>();
    return [...this.edges.keys()].sort(byName).flatMap((pin) => {
      if (seen.has(pin)) return [];
      const group = [...this.from(pin).keys()].sort(byName);
      for (const each of group) seen.add(each);
      return [group];
    });
  }

  /** The fewest links from one pin to another of its net. */
  chain(from: string, to: string): Link[] {
    const came = this.from(from);
    const links: Link[] = [];
    for (let at = to; at !== from;) {
      const step = came.get(at)!;
      links.unshift(step.link);
      at = step.to;
    }
    return links;
  }

  /** All pins of a net, each with the step back towards the first: breadth first, so the fewest links. */
  private from(pin: string): Map<string, Edge> {
    const came = new Map<string, Edge>([[pin, { to: pin, link: { name: '' } }]]);
    for (const at of came.keys()) for (const { to, link } of this.edges.get(at)!) if (!came.has(to)) came.set(to, { to: at, link });
    return came;
  }
}

/** U2.9 before U2.10. */
function byName(a: string, b: string): number {
  const [x, y] = [a.split(/(\d+)/), b.split(/(\d+)/)];
  for (let i = 0; i < Math.min(x.length, y.length); i++) {
    if (x[i] === y[i]) continue;
    return i % 2 === 1 ? Number(x[i]) - Number(y[i]) : x[i]! < y[i]! ? -1 : 1;
  }
  return x.length - y.length;
}

function namedNets(groups: readonly string[][], named: ReadonlyMap<string, NetName>): Net[] {
  const taken = new Set([...named.values()].map(({ node }) => node));
  return groups.map((pins) => {
    const own = pins.flatMap((pin) => named.get(pin) ?? []);
    const best = own.find(({ kind }) => kind === 'ground') ?? own.find(({ kind }) => kind === 'supply') ?? own[0];
    if (best) return { node: best.node, kind: best.kind, isNamed: true, pins };
    const node = freeNode(pins[0]!, taken);
    taken.add(node);
    return { node, kind: 'signal', isNamed: false, pins };
  });
}

function freeNode(pin: string, taken: ReadonlySet<string>): string {
  const node = `n_${pin.toLowerCase().replace(/[^a-z0-9]+/g, '_')}`.slice(0, 60);
  for (let i = 2, tried = node; ; tried = `${node}_${i++}`) if (!taken.has(tried)) return tried;
}

function apartButJoined(
  apart: readonly { readonly pins: readonly [string, string]; readonly at: number }[],
  nodeOf: ReadonlyMap<string, string>,
  graph: Graph,
): Contradiction[] {
  return apart.flatMap(({ pins, at }) => {
    const node = nodeOf.get(pins[0])!;
    if (node !== nodeOf.get(pins[1])) return [];
    return [{ code: 'measured-apart', pins, node, apart: at, through: graph.chain(...pins) }];
  });
}

/** Nets with two names: that of two supplies, or of a supply and ground, is the graver one. */
function clashingNames(nets: readonly Net[], named: ReadonlyMap<string, NetName>, graph: Graph): Contradiction[] {
  return nets.flatMap(({ node, pins }) => {
    const first = new Map<string, string>();
    for (const pin of pins) {
      const name = named.get(pin);
      if (name && !first.has(name.node)) first.set(name.node, pin);
    }
    const best = first.get(node);
    return [...first].flatMap(([other, pin]): Contradiction[] => {
      if (other === node || best === undefined) return [];
      const areSupplies = [best, pin].every((each) => named.get(each)!.kind !== 'signal');
      const code = areSupplies ? 'supplies-joined' : 'two-names';
      return [{ code, pins: [best, pin], node, names: [node, other], through: graph.chain(best, pin) }];
    });
  });
}
