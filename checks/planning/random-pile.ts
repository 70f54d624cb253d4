import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import type { Assembly, Pile, PileItem, PileModel, PilePart, Remedy, Supplier } from '../../src/core/planning/index.ts';

const SLOTS = ['board', 'display', 'shell', 'battery', 'speaker', 'keys', 'light', 'connector'] as const;
type Slot = (typeof SLOTS)[number];

/** By slot: chance that it is in order, share of the unit's price that a working one brings, and of a new one. */
const SHARES: Readonly<Record<Slot, { works: number; left: number; bought: number | null }>> = {
  board: { works: 0.45, left: 0.12, bought: null },
  display: { works: 0.7, left: 0.1, bought: null },
  shell: { works: 0.7, left: 0.04, bought: 0.16 },
  battery: { works: 0.55, left: 0.02, bought: 0.1 },
  speaker: { works: 0.85, left: 0.01, bought: 0.05 },
  keys: { works: 0.8, left: 0.01, bought: 0.05 },
  light: { works: 0.8, left: 0.02, bought: null },
  connector: { works: 0.75, left: 0.005, bought: 0.04 },
};

export interface StudyPile {
  readonly units: number;
  readonly seed: string;
}

/**
 * A made-up pile: five models of eight slots, three suppliers, 20 hours. What is wrong with an assembly is known up to
 * its look: in order, or one of two doubtful looks, or dead. Prices and rates are invented; nobody's real pile.
 */
export function randomPile({ units, seed }: StudyPile): Pile {
  const random = randomStream(`pile ${seed}`);
  const models = Array.from({ length: 5 }, (_, m) => modelOf(m, random));
  const parts = models.flatMap((model) => partsOf(model));
  return {
    models,
    parts: [...parts, { id: 'small parts', stock: 4, keptMinor: 20, fills: [] }],
    items: Array.from({ length: units }, (_, i) => unitOf(`unit ${i + 1}`, models[Math.floor(random() * models.length)]!, random)),
    suppliers: ['near', 'far', 'wide'].map((id, s) => supplierOf(id, s, models, random)),
    limits: { moneyMinor: 40_000, minutes: 20 * 60, minutesAWeek: 10 * 60 },
    wishes: { hourMinor: 1000, riskShare: 0, dayMinor: 5, withinDays: 30 },
  };
}

function modelOf(m: number, random: RandomStream): PileModel {
  const soldMinor = Math.round(6000 + 9000 * random());
  const worth = (share: number) => ({ soldMinor: Math.round(share * soldMinor), keptMinor: 0, scrapMinor: 0 });
  return {
    id: `model ${m + 1}`,
    slots: SLOTS.map((id) => ({ id, works: worth(SHARES[id].left), failed: worth(SHARES[id].left * 0.1) })),
    buildMinutes: Math.round(20 + 10 * random()),
    soldMinor,
    eachFurther: 1,
    original: { slots: ['display', 'shell'], moreMinor: Math.round(0.1 * soldMinor) },
    priceSpread: 0.15,
  };
}

function partsOf(model: PileModel): PilePart[] {
  return SLOTS.filter((slot) => SHARES[slot].bought !== null).map((slot) => ({
    id: `${slot} of ${model.id}`,
    stock: 0,
    keptMinor: Math.round(0.3 * SHARES[slot].bought! * model.soldMinor),
    fills: [{ model: model.id, slot, chance: 0.95, minutes: 5 }],
  }));
}

/** The near one has everything and is dear; the far one is cheap, slow and sells some things by three only; the wide one has half. */
function supplierOf(id: string, s: number, models: readonly PileModel[], random: RandomStream): Supplier {
  const dearness = [1.15, 0.8, 0.95][s]!;
  const offers = models.flatMap((model) =>
    SLOTS.flatMap((slot) => {
      const { bought } = SHARES[slot];
      if (bought === null || (s > 0 && random() < (s === 1 ? 0.35 : 0.5))) return [];
      const unitMinor = Math.round(bought * model.soldMinor * dearness * (0.85 + 0.3 * random()));
      return [{ part: `${slot} of ${model.id}`, unitMinor, least: s === 1 && random() < 0.3 ? 3 : 1 }];
    }),
  );
  return {
    id,
    postageMinor: [300, 700, 450][s]!,
    days: [2, 18, 5][s]!,
    offers: [...offers, { part: 'small parts', unitMinor: [150, 60, 90][s]!, least: s === 1 ? 5 : 1 }],
  };
}

function unitOf(id: string, model: PileModel, random: RandomStream): PileItem {
  const assemblies = SLOTS.flatMap((slot) => (random() < 0.03 ? [] : [assemblyOf(slot, random)]));
  return {
    id,
    model: model.id,
    assemblies,
    whole: { asIsMinor: Math.round(model.soldMinor * (0.15 + 0.1 * random())), openMinutes: 10 },
  };
}

function assemblyOf(slot: Slot, random: RandomStream): Assembly {
  if (random() < SHARES[slot].works) return { slot, faults: { works: 1 }, remedies: [] };
  const look = random();
  if (look < 0.4) return { slot, faults: { dead: 1 }, remedies: [] };
  if (look < 0.7) return { slot, faults: { works: 0.1, dirty: 0.5, joint: 0.2, dead: 0.2 }, remedies: remediesOf(slot) };
  return { slot, faults: { works: 0.05, dirty: 0.1, joint: 0.45, dead: 0.4 }, remedies: remediesOf(slot) };
}

function remediesOf(slot: Slot): Remedy[] {
  const hard = slot === 'board' ? 2 : slot === 'shell' ? 0.6 : 1;
  const minutes = (m: number) => Math.round(m * hard);
  const remedy = (id: string, mends: Record<string, number>, harm: number, costMinor: number, m: number, uses = {}): Remedy => ({
    id,
    mends,
    harm,
    costMinor,
    minutes: minutes(m),
    minutesSpread: 0,
    uses,
    gives: {},
  });
  return [
    remedy('clean', { dirty: 0.85, joint: 0.05 }, 0.01, 30, 10),
    remedy('rework', { dirty: 0.6, joint: 0.8 }, 0.05, 60, 18),
    remedy('replace parts', { dirty: 0.85, joint: 0.85, dead: 0.35 }, 0.05, 100, 30, { 'small parts': 1 }),
  ];
}
