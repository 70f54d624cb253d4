import { believe, type Belief } from '../../core/diagnosis/index.ts';
import type { BoardBelief } from '../../core/diagnosis/board/index.ts';
import type { DeviceModel, Evidence } from '../../core/diagnosis/model.ts';
import { modelKey, versionKey } from '../grow/model-key.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import { blocksOfSlot, deviceModelOf } from './device-model.ts';
import { evidenceOf, type EvidenceSources } from './evidence.ts';
import { claimKind, type Honesty } from '../learning/index.ts';
import { lifeOf } from './life.ts';
import type { Memo } from './memo.ts';
import { believeOn, type OnBoard } from './board/believe-on.ts';
import type { KnownBoards } from './board/known-boards.ts';
import { wetAreas, wetModel } from './board/wet-model.ts';
import { scaledToWell } from './scaled-to-well.ts';
import { faultsIn, nothingWrong, slotWell } from './well-chance.ts';

/** What is believed of one item, and from what. */
export interface Judged {
  readonly model: Model;
  readonly device: DeviceModel;
  readonly evidence: readonly Evidence[];
  /** Its odd evidence is named by the place in `evidence`, so that units of which the same is known share one belief. */
  readonly belief: Belief;
  /** The slot of an assembly; null for a unit. */
  readonly slot: string | null;
  /** Judged as if all around it were known to be good, as an assembly out of its home is. */
  readonly alone: boolean;
  /** Written out, all that the belief depends on. */
  readonly key: string;
  /** Where the circuit of the model is known: then `model` and `device` have it worked in, and the belief goes by it. */
  readonly board: OnBoard | null;
}

/** A chain of moves from unit to unit longer than this is cut: the oldest home is then judged by the model's rates alone. */
const LONGEST_CHAIN = 12;

/** Beliefs of the items of one state of the bench. `memo` outlives it, for what is believed depends on the evidence alone. */
export class Beliefs {
  readonly #known = new Map<string, Judged | null>();
  readonly #incoming = new Map<string, Readonly<Record<string, number>>>();

  constructor(
    readonly state: Readonly<BenchState>,
    readonly models: ReadonlyMap<string, Model>,
    readonly honesty: Honesty,
    readonly memo: Memo<Belief>,
    readonly boards: KnownBoards,
    readonly boardMemo: Memo<BoardBelief>,
  ) {}

  /** Null when the model of the item is not known here. */
  of(item: Item): Judged | null {
    const known = this.#known.get(item.id);
    if (known !== undefined) return known;
    const judged = item.kind === 'assembly' ? this.#assembly(item) : this.#unit(item);
    this.#known.set(item.id, judged);
    return judged;
  }

  /** What is believed of a fresh or imagined unit on such evidence. */
  on(model: Model, evidence: readonly Evidence[], slot: string | null = null, alone = false): Judged {
    const known = this.boards.of(model);
    const numbered = evidence.map((piece, place) => ({ ...(known ? piece : withoutPart(piece)), id: String(place) }));
    const question = `${nameOf(model)}|${JSON.stringify(numbered)}`;
    if (known) {
      const { onBoard, key } = believeOn(this.boards, known, numbered, question, this.boardMemo);
      return { model: known.model, device: known.device, evidence, belief: onBoard.belief, slot, alone, key, board: onBoard };
    }
    const device = deviceModelOf(model);
    const belief = this.memo.get(question, () => believe(device, numbered));
    return { model, device, evidence, belief, slot, alone, key: question, board: null };
  }

  /** The model of that name, with its circuit where that is known. */
  #model(id: string): Model | undefined {
    const model = this.models.get(id);
    return model && (this.boards.of(model)?.model ?? model);
  }

  /** The model of a unit, with the areas of its board where liquid dried, once what its circuit says of them is known. */
  #modelOf(unit: Item): Model | undefined {
    const model = this.models.get(modelKey(unit));
    const soaked = model && wetModel(model, wetAreas(lifeOf(unit, this.state.items)));
    return soaked && (this.boards.of(soaked)?.model ?? this.#model(modelKey(unit)));
  }

  #unit(item: Item): Judged | null {
    const model = this.#modelOf(item);
    return model ? this.on(model, this.#evidence(item, model, 0)) : null;
  }

  #assembly(item: Item): Judged | null {
    const home = item.inside === null ? undefined : this.state.items.get(item.inside);
    const model = home && this.#modelOf(home);
    if (home && model) return this.on(model, this.#evidence(home, model, 0), item.slot);
    const alone = this.#aloneUntil(item, undefined, 0);
    return alone && this.on(alone.model, alone.evidence, item.slot, true);
  }

  /**
   * Evidence for an assembly out of its home, before the event `until`: that of its latest home up to the time it was
   * taken out, then as if all around it were known to be good, then its own. So everything learned of it moves with it.
   */
  #aloneUntil(item: Item, until: string | undefined, depth: number): { model: Model; evidence: Evidence[] } | null {
    const end = until === undefined ? item.history.length : item.history.findIndex((entry) => entry.eventId === until) + 1;
    const life = item.history.slice(0, end);
    const out = life.findLastIndex((entry) => entry.kind === 'moved' && entry.from !== null);
    const moved = life[out];
    const home = moved?.kind === 'moved' && moved.from !== null ? this.state.items.get(moved.from) : undefined;
    const remembers = home?.history.some((entry) => entry.eventId === moved?.eventId) && depth < LONGEST_CHAIN;
    const model = this.#model(modelKey(remembers ? home! : item)) ?? this.#model(modelKey(item));
    if (!model) return null;
    const before = remembers ? this.#evidence(home!, model, depth + 1, moved!.eventId) : [];
    const own = evidenceOf(item, life.slice(out + 1), model, this.#sources(depth + 1), until);
    return { model, evidence: [...before, aroundIsGood(model, item.slot), ...own] };
  }

  #evidence(unit: Item, model: Model, depth: number, until?: string): Evidence[] {
    return evidenceOf(unit, lifeOf(unit, this.state.items), model, this.#sources(depth), until);
  }

  #sources(depth: number): EvidenceSources {
    return {
      honesty: (seller, claim, itemId) => this.honesty.chance(seller, claimKind(claim), itemId),
      incoming: (assemblyId, eventId, model, slot) => this.#incomingFaults(assemblyId, eventId, model, slot, depth),
    };
  }

  #incomingFaults(assemblyId: string, eventId: string, into: Model, slot: string, depth: number): Readonly<Record<string, number>> {
    const question = `${assemblyId}@${eventId}@${nameOf(into)}@${this.boards.of(into)?.key ?? ''}`;
    const known = this.#incoming.get(question);
    if (known) return known;
    const item = this.state.items.get(assemblyId);
    const alone = item ? this.#aloneUntil(item, eventId, depth) : null;
    const from = alone ?? { model: into, evidence: [aroundIsGood(into, slot)] };
    const faults = this.broughtBy(this.on(from.model, from.evidence, slot, true), into, slot);
    this.#incoming.set(question, faults);
    return faults;
  }

  /** Chances of the faults that what is in this slot would bring into a unit of the model `into`. */
  broughtBy(judged: Judged, into: Model, slot: string): Readonly<Record<string, number>> {
    const chances = inWordsOf(into, judged.model, blocksOfSlot(into.file, slot), judged.belief.marginal);
    return scaledToWell(chances, slotWell(judged, slot));
  }
}

/** Chance that an item is well: in all its blocks for a unit, in those of its slot for an assembly. */
export const worksChance = (judged: Judged): number => (judged.slot === null ? nothingWrong(judged.belief) : slotWell(judged, judged.slot));

/** The same name for the same numbers. */
export const nameOf = ({ file, version, own }: Model): string => {
  const name = version === undefined ? file.id : versionKey(file.id, version);
  return own ? `${name}~${own.stamp}` : name;
};

function aroundIsGood(model: Model, slot: string): Evidence {
  const inside = new Set(blocksOfSlot(model.file, slot));
  const blocks = model.file.blocks.filter((block) => !inside.has(block.id)).map((block) => block.id);
  const incoming = Object.fromEntries([...faultsIn(model, blocks)].map((fault) => [fault, 0]));
  return { id: 'out-of-its-home', kind: 'transplant', blocks, incoming };
}

/**
 * Chances of the faults of one model, as chances of another one's faults in the given blocks: by name where both have
 * it; what is left in a block is shared over the faults of that block by their rates.
 */
function inWordsOf(
  into: Model,
  from: Model,
  blocks: readonly string[],
  chances: ReadonlyMap<string, number>,
): Readonly<Record<string, number>> {
  const faults = into.file.faults.filter((fault) => blocks.includes(fault.block));
  const names = new Set(faults.map((fault) => fault.id));
  const result = Object.fromEntries(faults.map((fault) => [fault.id, chances.get(fault.id) ?? 0]));
  if (into === from) return result;
  for (const other of from.file.faults) {
    const chance = chances.get(other.id) ?? 0;
    const peers = names.has(other.id) ? [] : faults.filter((fault) => fault.block === other.block);
    const rates = peers.reduce((sum, fault) => sum + fault.rate, 0);
    for (const peer of peers) if (rates > 0) result[peer.id] = Math.min(1, result[peer.id]! + (chance * peer.rate) / rates);
  }
  return result;
}

/** Without a circuit a finding at a part is one at its block. */
function withoutPart(piece: Evidence): Evidence {
  if (piece.kind !== 'finding') return piece;
  const { id, kind, block, sees } = piece;
  return { id, kind, block, sees };
}
