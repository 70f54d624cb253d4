import type { Evidence } from '../../core/diagnosis/model.ts';
import type { Claim } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { HistoryEntry, Item } from '../state.ts';
import { blocksOfSlot } from './device-model.ts';

/** What a history entry needs of the rest of the bench to become evidence. */
export interface EvidenceSources {
  /** Chance that this claim of the seller on this item is right. */
  honesty(seller: string, claim: Claim, itemId: string): number;
  /**
   * Chances of the faults of this model that an assembly brings into a slot with the transplant of that event.
   * Undefined when nothing is known of it.
   */
  incoming(assemblyId: string, eventId: string, model: Model, slot: string): Readonly<Record<string, number>>;
}

/**
 * The life of one item as evidence in the words of its model, oldest first, up to the event `until` (left out
 * itself). What names something that the model does not hold says nothing to it and is left out. An event that
 * says several things gives several pieces, with "#2", "#3" … behind its id.
 */
export function evidenceOf(
  item: Pick<Item, 'id' | 'proof'>,
  life: readonly HistoryEntry[],
  model: Model,
  sources: EvidenceSources,
  until?: string,
): Evidence[] {
  const end = until === undefined ? -1 : life.findIndex((entry) => entry.eventId === until);
  const entries = end < 0 ? life : life.slice(0, end);
  const words = wordsOf(model);
  const pieces = entries.flatMap((entry) => pieceOf(entry, item.id, words, sources));
  return distinct(until === undefined ? [...pieces, ...proofAsTrials(item.proof, words)] : pieces);
}

/** The event that a piece of evidence came from. */
export const eventOf = (evidenceId: string): string => evidenceId.split('#')[0]!;

interface Words {
  readonly model: Model;
  readonly functions: ReadonlySet<string>;
  readonly accessories: ReadonlySet<string>;
  readonly remedies: ReadonlySet<string>;
  readonly points: ReadonlyMap<string, string>;
  /** Block for each name of a place: a block itself, or the block of a test point or of a part of the board. */
  readonly places: ReadonlyMap<string, string>;
  /** Parts of the board, which are places by themselves where the circuit is known. */
  readonly parts: ReadonlySet<string>;
}

const known = new WeakMap<Model, Words>();

function wordsOf(model: Model): Words {
  const before = known.get(model);
  if (before) return before;
  const { file } = model;
  const parts = model.circuit?.parts ?? [];
  const taken = new Set([...file.points, ...file.blocks].map(({ id }) => id));
  const words: Words = {
    model,
    functions: new Set(file.functions.map(({ id }) => id)),
    accessories: new Set(file.accessories.map(({ id }) => id)),
    remedies: new Set(file.remedies.map(({ id }) => id)),
    points: new Map(file.points.map(({ id, mode }) => [id, mode])),
    places: new Map([
      ...parts.map(({ ref, block }) => [ref, block] as const),
      ...file.points.map(({ id, block }) => [id, block] as const),
      ...file.blocks.map(({ id }) => [id, id] as const),
    ]),
    parts: new Set(parts.map(({ ref }) => ref).filter((ref) => !taken.has(ref))),
  };
  known.set(model, words);
  return words;
}

function pieceOf(entry: HistoryEntry, itemId: string, words: Words, sources: EvidenceSources): Evidence[] {
  const id = entry.eventId;
  switch (entry.kind) {
    case 'claim':
      return claimPiece(entry, itemId, words, sources);
    case 'trial': {
      if (!words.functions.has(entry.function)) return [];
      const accessories = entry.with.filter((name) => words.accessories.has(name));
      return [{ id, kind: 'trial', function: entry.function, outcome: entry.outcome, with: accessories }];
    }
    case 'finding':
      return findingPiece(entry, words);
    case 'reading':
      return words.points.get(entry.point) === entry.mode ? [{ id, kind: 'reading', point: entry.point, value: entry.value }] : [];
    case 'remedy':
      return words.remedies.has(entry.remedy) ? [{ id, kind: 'remedy', remedy: entry.remedy, outcome: entry.outcome }] : [];
    case 'slot':
      return slotPiece(entry, words, sources);
    case 'moved':
      return [];
  }
}

function claimPiece(entry: Extract<HistoryEntry, { kind: 'claim' }>, itemId: string, words: Words, sources: EvidenceSources): Evidence[] {
  const { claim, eventId: id } = entry;
  const honesty = sources.honesty(entry.seller, claim, itemId);
  if (claim.about === 'function')
    return words.functions.has(claim.function) ? [{ id, kind: 'claim', function: claim.function, says: claim.says, honesty }] : [];
  if (claim.about === 'untested') return [];
  const block = words.places.get(claim.place);
  return block === undefined ? [] : [{ id, kind: 'claim-place', block, sees: claim.sees, honesty }];
}

/** A slot as a place stands for its assembly: missing, it is an empty slot; well, so are all its blocks. */
function findingPiece(entry: Extract<HistoryEntry, { kind: 'finding' }>, words: Words): Evidence[] {
  const { eventId: id, sees } = entry;
  const place = partOfPad(entry.place, words) ?? entry.place;
  const block = words.places.get(place);
  if (block !== undefined) return [{ id, kind: 'finding', block, sees, ...(words.parts.has(place) ? { part: place } : {}) }];
  const blocks = blocksOfSlot(words.model.file, place);
  if (blocks.length > 0 && sees === 'missing') return [{ id, kind: 'transplant', blocks, incoming: null }];
  if (blocks.length > 1 && sees !== 'nothing-wrong') return [];
  return blocks.map((each) => ({ id, kind: 'finding', block: each, sees }));
}

/** A pad, such as "U3.5", stands for its part. */
function partOfPad(place: string, { parts, places }: Words): string | undefined {
  const part = places.has(place) ? undefined : place.slice(0, place.lastIndexOf('.'));
  return part !== undefined && parts.has(part) ? part : undefined;
}

function slotPiece(entry: Extract<HistoryEntry, { kind: 'slot' }>, words: Words, sources: EvidenceSources): Evidence[] {
  const blocks = blocksOfSlot(words.model.file, entry.slot);
  if (blocks.length === 0) return [];
  const incoming = entry.came === null ? null : sources.incoming(entry.came, entry.eventId, words.model, entry.slot);
  return [{ id: entry.eventId, kind: 'transplant', blocks, incoming }];
}

/** Proof step of a function: `works.` and the function. */
export const PROOF_OF_FUNCTION = 'works.';

/** Proof steps of functions are trials, too, and one that failed says that the unit is not well. The fold keeps only those that no later work has touched. */
function proofAsTrials(proof: Item['proof'], words: Words): Evidence[] {
  return [...proof].flatMap(([step, { outcome, eventId }]): Evidence[] => {
    const name = step.startsWith(PROOF_OF_FUNCTION) ? step.slice(PROOF_OF_FUNCTION.length) : '';
    if (!words.functions.has(name) || outcome === 'signed-off') return [];
    if (outcome === 'pass') return [{ id: eventId, kind: 'trial', function: name, outcome: 'works', with: [] }];
    return [
      { id: eventId, kind: 'trial', function: name, outcome: 'fails', with: [] },
      { id: eventId, kind: 'not-well' },
    ];
  });
}

function distinct(pieces: readonly Evidence[]): Evidence[] {
  const times = new Map<string, number>();
  return pieces.map((piece) => {
    const time = (times.get(piece.id) ?? 0) + 1;
    times.set(piece.id, time);
    return time === 1 ? piece : { ...piece, id: `${piece.id}#${time}` };
  });
}
