import { formatMinor } from '../core/quantity/index.ts';
import { proofOf } from './advice/proof.ts';
import { partRemedyNamed } from './boards/part-remedies.ts';
import type { Claim } from './events/index.ts';
import type { Model, ModelFile } from './models/index.ts';
import type { BenchState } from './state.ts';

type Section = 'functions' | 'accessories' | 'points' | 'remedies' | 'slots' | 'blocks' | 'steps' | 'fasteners';

/** How things are called in sentences: by the names that person and model gave them, else by their ids. */
export interface LogWords {
  readonly item: (id: string) => string;
  /** The name that the item's model gives to one of its parts. */
  readonly named: (itemId: string, section: Section, id: string) => string;
  /** A block, a slot or a set of fasteners. */
  readonly place: (itemId: string, id: string) => string;
  /** A step of the proof of an item. */
  readonly step: (itemId: string, id: string) => string;
  readonly claim: (itemId: string, claim: Claim) => string;
  /** "12.50 GBP", in the bench's currency unless another is named. */
  readonly money: (amountMinor: number, currency?: string) => string;
  readonly bag: (id: string) => string;
  readonly listing: (id: string) => string;
  readonly model: (id: string) => string;
}

export function logWords(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): LogWords {
  const fileOf = (itemId: string): ModelFile | undefined => models.get(state.items.get(itemId)?.modelId ?? '')?.file;
  const onParts = (itemId: string, id: string): string | undefined => {
    const model = models.get(state.items.get(itemId)?.modelId ?? '');
    return model && partRemedyNamed(model, id)?.spec.name;
  };
  const named: LogWords['named'] = (itemId, section, id) =>
    fileOf(itemId)?.[section].find((entry) => entry.id === id)?.name ?? (section === 'remedies' ? onParts(itemId, id) : undefined) ?? id;
  const place: LogWords['place'] = (itemId, id) => {
    const sections = ['blocks', 'slots', 'fasteners'] as const;
    return sections.map((section) => named(itemId, section, id)).find((name) => name !== id) ?? id;
  };
  return {
    named,
    place,
    step: (itemId, id) => {
      const item = state.items.get(itemId);
      const steps = item ? proofOf(item, models.get(item.modelId) ?? null).steps : [];
      return steps.find((step) => step.id === id)?.name ?? spaced(id);
    },
    item: (id) => {
      const item = state.items.get(id);
      return item ? `#${item.number} ${item.name}` : id;
    },
    claim: (itemId, claim) => {
      if (claim.about === 'untested') return 'untested';
      if (claim.about === 'place') return `${place(itemId, claim.place)}: ${spaced(claim.sees)}`;
      return `${named(itemId, 'functions', claim.function)} ${spaced(claim.says)}`;
    },
    money: (amountMinor, currency = state.settings.currency) => `${formatMinor(amountMinor, currency)} ${currency}`,
    bag: (id) => state.bags.get(id)?.name ?? id,
    model: (id) => models.get(id)?.file.name ?? state.grown.get(id)?.name ?? id,
    listing: (id) => state.listings.get(id)?.body.title ?? id,
  };
}

/** "comes and goes" for "comes-and-goes". */
export const spaced = (word: string): string => word.replaceAll('-', ' ');
