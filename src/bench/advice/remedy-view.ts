import type { RankedRemedy } from '../../core/diagnosis/index.ts';
import { recipeFor } from '../recipes/index.ts';
import type { RemedyView } from '../views/index.ts';
import type { Judged } from './beliefs.ts';
import { donorWords, type Donor } from './donors.ts';
import type { PartStock } from './drawer-parts.ts';
import { faultName, listed, minutesText, money, partName, percent, upper, whole } from './say.ts';

/** A remedy with its numbers, from a ranking or as a step of a plan. */
export type ReckonedRemedy = Omit<RankedRemedy, 'ratio'>;

export interface Bench {
  readonly parts: ReadonlyMap<string, PartStock>;
  readonly donors: ReadonlyMap<string, readonly Donor[]>;
  readonly currency: string;
}

/** A ranked remedy in the words of its model, with what the drawer holds for it. */
export function remedyView(judged: Judged, ranked: ReckonedRemedy, bench: Bench): RemedyView {
  const spec = judged.model.file.remedies.find((candidate) => candidate.id === ranked.remedy.id)!;
  return {
    id: spec.id,
    name: spec.name,
    kind: spec.kind,
    chance: Math.min(1, Math.max(0, ranked.chance)),
    minutes: Math.round(ranked.minutes * 10) / 10,
    cost_minor: whole(ranked.costMinor),
    risk: spec.risk,
    parts: spec.parts.map(({ part, count }) => ({
      part,
      name: partName(judged.model, part),
      count,
      in_drawer: bench.parts.get(part)?.count ?? 0,
    })),
    slot: spec.slot ?? null,
    donors: donorsView(spec.slot ? bench.donors.get(spec.slot) : []),
    how: spec.how,
    recipe: recipeFor(spec)?.id ?? null,
    cautions: [...spec.cautions],
    why: whyRemedy(judged, ranked, bench),
    spots: spotsOf(judged, ranked.remedy),
  };
}

export const donorsView = (donors: readonly Donor[] = []): RemedyView['donors'] =>
  donors.map(({ itemId, name, chance }) => ({ item_id: itemId, name, chance }));

/** A change of assembly as a remedy, also where the model lists no remedy for it. */
export function swapView(judged: Judged, slot: string, chance: number, minutes: number, costMinor: number, bench: Bench): RemedyView {
  const { file } = judged.model;
  const spec = file.slots.find((candidate) => candidate.id === slot)!;
  const remedy = file.remedies.find((candidate) => candidate.kind === 'transplant' && candidate.slot === slot);
  return {
    id: remedy?.id ?? `swap.${slot}`.slice(0, 64),
    name: remedy?.name ?? `Another ${spec.name.toLowerCase()}`,
    kind: 'transplant',
    chance,
    minutes: Math.round(minutes * 10) / 10,
    cost_minor: whole(costMinor),
    risk: remedy?.risk ?? 0,
    parts: [],
    slot,
    donors: donorsView(bench.donors.get(slot)),
    how: remedy?.how ?? '',
    recipe: recipeFor(remedy ?? { kind: 'transplant', slot })?.id ?? null,
    cautions: [...new Set([...spec.cautions, ...(remedy?.cautions ?? [])])],
    why: [],
    spots: [],
  };
}

function whyRemedy(
  { model, belief }: Judged,
  { remedy, chance, costMinor, minutes }: ReckonedRemedy,
  { currency, parts, donors }: Bench,
): string[] {
  const spec = model.file.remedies.find((candidate) => candidate.id === remedy.id)!;
  const mended = Object.entries(remedy.mends)
    .map(([fault, mends]) => ({ fault, mends, believed: belief.marginal.get(fault) ?? 0 }))
    .filter(({ mends, believed }) => mends > 0 && believed >= 0.01)
    .sort((a, b) => b.mends * b.believed - a.mends * a.believed)
    .slice(0, 3)
    .map(({ fault, mends, believed }) => `${faultName(model, fault)} (believed ${percent(believed)}, removed with ${percent(mends)})`);
  const lacking = spec.parts.filter(({ part, count }) => (parts.get(part)?.count ?? 0) < count);
  const donor = spec.slot ? donors.get(spec.slot)?.[0] : undefined;
  return [
    `${percent(chance)} that the unit works after it, for ${money(costMinor, currency)} of minutes and parts (${minutesText(minutes)} with opening and trying it).`,
    ...(mended.length > 0 ? [`It is for: ${listed(mended)}.`] : []),
    ...lacking.map(({ part, count }) => `To buy: ${count} × ${partName(model, part)}; too few in the drawer.`),
    ...(donor && spec.slot ? [`${upper(donorWords(model, spec.slot, donor))}: ${percent(donor.chance)} that it is well.`] : []),
    ...(spec.risk > 0 ? [`${percent(spec.risk)} that the work ruins the unit.`] : []),
  ];
}

const MOST_SPOTS = 6;

/** Parts of the board that a remedy is done to: its own part, or those of the likeliest faults that it mends. */
function spotsOf({ model, belief, board }: Judged, { id, mends }: ReckonedRemedy['remedy']): RemedyView['spots'] {
  if (!board || !model.circuit) return [];
  const likely = Object.keys(mends)
    .filter((fault) => (belief.marginal.get(fault) ?? 0) >= 0.01)
    .sort((a, b) => belief.marginal.get(b)! - belief.marginal.get(a)!)
    .flatMap((fault) => board.known.faults.get(fault)?.refs.slice(0, 2) ?? []);
  const own = board.known.remedies.get(id)?.ref;
  const refs = new Set(own ? [own] : likely.slice(0, MOST_SPOTS));
  return model.circuit.parts.flatMap(({ ref, x, y, side }) => (refs.has(ref) && side !== 'off' ? [{ ref, x_mm: x, y_mm: y, side }] : []));
}
