import type { SharedFact } from '../events/index.ts';
import { placeOf } from './fact-text.ts';

/** One place of which two people say different things. */
export interface Conflict {
  readonly place: string;
  readonly ours: SharedFact;
  readonly theirs: SharedFact;
}

export interface Merge {
  /** Facts that both tell. */
  readonly agreed: number;
  /** Theirs, of which ours says nothing. */
  readonly fresh: readonly SharedFact[];
  readonly conflicts: readonly Conflict[];
}

/** Two marks nearer than this are one place, mm: nobody taps better. Common practice, no source. */
const SAME_PLACE_MM = 0.5;

/**
 * What another's model adds to ours, and where the two say different things. Readings of boards never stand against each other, for two boards may differ: each is
 * told as a board of its author. Pure; `theirs` is not changed, `author` is whose bundle it is.
 */
export function mergeModels(ours: readonly SharedFact[], theirs: readonly SharedFact[], author: string): Merge {
  const known = inBuckets(ours.flatMap(single));
  let agreed = 0;
  const fresh: SharedFact[] = [];
  const conflicts: Conflict[] = [];
  for (const fact of theirs.flatMap(single).map((each) => named(each, author))) {
    const against = (known.get(bucketOf(fact)) ?? [])
      .map((own) => ({ own, says: compare(own, fact) }))
      .filter(({ says }) => says !== 'apart');
    const other = against.find(({ says }) => says === 'other');
    if (other) conflicts.push({ place: placeOf(fact), ours: other.own, theirs: fact });
    else if (against.length > 0) agreed += 1;
    else fresh.push(fact);
  }
  return { agreed, fresh, conflicts };
}

/** The facts that come in: all that are fresh, and of the conflicts those in which theirs was chosen. */
export const factsToTake = ({ fresh, conflicts }: Merge, takesTheirs: (conflict: Conflict, index: number) => boolean): SharedFact[] => [
  ...fresh,
  ...conflicts.filter(takesTheirs).map(({ theirs }) => theirs),
];

function inBuckets(facts: readonly SharedFact[]): ReadonlyMap<string, readonly SharedFact[]> {
  const buckets = new Map<string, SharedFact[]>();
  for (const fact of facts) {
    const bucket = buckets.get(bucketOf(fact));
    if (bucket) bucket.push(fact);
    else buckets.set(bucketOf(fact), [fact]);
  }
  return buckets;
}

/** Facts that may speak of one place lie in one bucket, so that large models are not compared each with each. */
function bucketOf(fact: SharedFact): string {
  switch (fact.kind) {
    case 'model-fact-set':
      return `fact ${fact.body.section} ${fact.body.id}`;
    case 'model-parts-placed':
      return `part ${fact.body.parts[0]!.ref}`;
    case 'model-net-named':
      return `net ${fact.body.pin}`;
    case 'model-reading-taught':
      return `reading ${fact.body.point} ${fact.body.board}`;
    default:
      return fact.kind;
  }
}

/** Parts one by one, so that one that moved does not take the others with it. */
const single = (fact: SharedFact): SharedFact[] =>
  fact.kind === 'model-parts-placed' ? fact.body.parts.map((part) => ({ ...fact, body: { ...fact.body, parts: [part] } })) : [fact];

const MOST_LETTERS = 60;

/** Boards of others carry the name of their author, else two people's "good-1" would be one board. */
function named(fact: SharedFact, author: string): SharedFact {
  if (fact.kind !== 'model-reading-taught') return fact;
  const board = `${fact.author || author}: ${fact.body.board}`;
  return fact.author !== '' && fact.body.board.startsWith(`${fact.author}: `)
    ? fact
    : { ...fact, body: { ...fact.body, board: board.slice(0, MOST_LETTERS) } };
}

type Says = 'same' | 'other' | 'apart';
const agree = (same: boolean): Says => (same ? 'same' : 'other');

/** Whether two facts speak of one place, and then whether they say the same. */
function compare(own: SharedFact, their: SharedFact): Says {
  if (own.kind === 'model-fact-set' && their.kind === 'model-fact-set') return comparePlaces(own.body, their.body);
  if (own.kind === 'model-photo-set' && their.kind === 'model-photo-set')
    return own.body.side === their.body.side ? agree(own.body.photo === their.body.photo) : 'apart';
  if (own.kind === 'model-parts-placed' && their.kind === 'model-parts-placed')
    return compareParts(own.body.parts[0]!, their.body.parts[0]!);
  if (own.kind === 'model-pins-joined' && their.kind === 'model-pins-joined') return compareJoins(own.body, their.body);
  if (own.kind === 'model-net-named' && their.kind === 'model-net-named')
    return own.body.pin === their.body.pin ? agree(own.body.name === their.body.name) : 'apart';
  if (own.kind === 'model-netlist-set' && their.kind === 'model-netlist-set') return agree(own.body.text.trim() === their.body.text.trim());
  if (own.kind === 'model-step-recorded' && their.kind === 'model-step-recorded')
    return own.body.step.id === their.body.step.id ? agree(own.body.photo === their.body.photo) : 'apart';
  return own.kind === their.kind && alike(bodyOf(own), bodyOf(their)) ? 'same' : 'apart';
}

type Place = Extract<SharedFact, { kind: 'model-fact-set' }>['body'];

/** A whole entry against a field of it is looked at in that field. */
function comparePlaces(own: Place, their: Place): Says {
  if (own.section !== their.section || own.id !== their.id) return 'apart';
  if (own.field === their.field) return agree(alike(own.value, their.value));
  if (own.field !== undefined && their.field !== undefined) return 'apart';
  const [whole, part] = own.field === undefined ? [own, their] : [their, own];
  return agree(alike((whole.value as Record<string, unknown> | null)?.[part.field!], part.value));
}

type Part = Extract<SharedFact, { kind: 'model-parts-placed' }>['body']['parts'][number];

function compareParts(own: Part, their: Part): Says {
  if (own.ref !== their.ref) return 'apart';
  const near = Math.hypot(own.x_mm - their.x_mm, own.y_mm - their.y_mm) <= SAME_PLACE_MM;
  return agree(near && own.side === their.side && own.kind === their.kind && own.value === their.value);
}

type Join = Extract<SharedFact, { kind: 'model-pins-joined' }>['body'];

/** Joined against not joined, of two pins that both name. */
function compareJoins(own: Join, their: Join): Says {
  const shared = own.pins.filter((pin) => their.pins.includes(pin)).length;
  if (shared < 2) return 'apart';
  if (own.joined !== their.joined) return 'other';
  return shared === their.pins.length ? 'same' : 'apart';
}

const bodyOf = ({ body }: SharedFact): object => {
  const { model_id: _id, ...rest } = body;
  return rest;
};

/** Equal as JSON, whatever the order of fields. */
function alike(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return one === other;
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => Object.hasOwn(b, name) && alike(a[name], b[name]));
}
