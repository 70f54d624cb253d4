import type { DeviceModel, Remedy } from '../../core/diagnosis/model.ts';
import type { Item } from '../state.ts';
import { adviceId } from './advice-id.ts';
import { nameOf, type Judged } from './beliefs.ts';
import { partPrice } from './device-model.ts';
import type { Donor } from './donors.ts';
import type { PartStock } from './drawer-parts.ts';
import type { Memo } from './memo.ts';

type Spec = Judged['model']['file']['remedies'][number];

/** What can be done to one unit at this bench now: the remedies that are possible, at the prices of the drawer. */
export interface Workshop {
  /** With the transplants for which there is a donor. */
  readonly device: DeviceModel;
  /** Without them: mending it by itself. */
  readonly alone: DeviceModel;
  /** Written out, all that it depends on. */
  readonly key: string;
}

/**
 * The model's remedies as they stand for this unit. Parts at hand cost what they cost, others the model's price. A
 * transplant counts as likely to help as its best donor is to be well, and costs what that donor is worth; without a
 * donor, or a part to buy in its place, it is not possible. Declined remedies are left out. Units alike share one.
 */
export function workshopFor(
  item: Item,
  { model, device, belief, board }: Judged,
  parts: ReadonlyMap<string, PartStock>,
  donors: ReadonlyMap<string, readonly Donor[]>,
  memo: Memo<Workshop>,
): Workshop {
  const plain: Remedy[] = [];
  const swaps: Remedy[] = [];
  const worthThinkingOf = board ? likelyToHelp(device.remedies, belief) : device.remedies;
  for (const remedy of worthThinkingOf) {
    const spec = model.file.remedies.find((candidate) => candidate.id === remedy.id)!;
    if (item.declined.has(adviceId('remedy', spec.id))) continue;
    const priced = { ...remedy, partsCostMinor: partsCost(model.file, spec, parts) };
    if (!needsDonor(spec)) plain.push(priced);
    const donor = donors.get(spec.slot ?? '')?.[0];
    if (needsDonor(spec) && donor) swaps.push(withDonor(priced, donor));
  }
  const key = JSON.stringify([board?.known.key, nameOf(model), plain.map(priceOf), swaps.map((swap) => [...priceOf(swap), swap.mends])]);
  return memo.get(key, () => ({ device: { ...device, remedies: [...plain, ...swaps] }, alone: { ...device, remedies: plain }, key }));
}

const priceOf = (remedy: Remedy) => [remedy.id, remedy.partsCostMinor] as const;

/** A transplant for which no part is named takes an assembly from somewhere. */
export const needsDonor = (spec: Spec): boolean => spec.kind === 'transplant' && spec.parts.length === 0;

function withDonor(remedy: Remedy, donor: Donor): Remedy {
  const mends = Object.fromEntries(Object.entries(remedy.mends).map(([fault, chance]) => [fault, chance * donor.chance]));
  return { ...remedy, mends, partsCostMinor: remedy.partsCostMinor + donor.valueMinor };
}

/** Minor units for the parts of a remedy: first those at hand, the rest at the model's price. */
export function partsCost(file: Judged['model']['file'], spec: Spec, parts: ReadonlyMap<string, PartStock>): number {
  return spec.parts.reduce((sum, { part, count }) => {
    const stock = parts.get(part);
    const atHand = Math.min(count, stock?.count ?? 0);
    return sum + atHand * (stock?.eachMinor ?? 0) + (count - atHand) * partPrice(file, part);
  }, 0);
}

/** Of the many remedies on parts, those that help at least so often are thought of, and no more than so many. */
const LEAST_HELP = 0.002;
const MOST_REMEDIES = 60;

function likelyToHelp(remedies: readonly Remedy[], { marginal }: Judged['belief']): readonly Remedy[] {
  const help = ({ mends }: Remedy): number =>
    Object.entries(mends).reduce((sum, [fault, chance]) => sum + chance * (marginal.get(fault) ?? 0), 0);
  const helpful = remedies.map((remedy) => ({ remedy, by: help(remedy) })).filter(({ by }) => by >= LEAST_HELP);
  const most = new Set(
    helpful
      .sort((a, b) => b.by / b.remedy.minutes - a.by / a.remedy.minutes)
      .slice(0, MOST_REMEDIES)
      .map(({ remedy }) => remedy),
  );
  return remedies.filter((remedy) => most.has(remedy));
}
