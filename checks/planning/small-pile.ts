import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import type { Assembly, Pile, PileItem, PileModel, Remedy } from '../../src/core/planning/index.ts';

const whole = (random: RandomStream, from: number, to: number): number => from + Math.floor(random() * (to - from + 1));

/** A pile small enough to try every plan: one or two models of two or three slots, two or three units, parts that are used and taken off. */
export function smallPile(seed: string, limits: Pile['limits']): Pile {
  const random = randomStream(`small pile ${seed}`);
  const models = Array.from({ length: whole(random, 1, 2) }, (_, m) => modelOf(m, random));
  const units = Array.from({ length: whole(random, 2, 3) }, (_, i) => unitOf(i, models[whole(random, 0, models.length - 1)]!, random));
  const loose = random() < 0.4 ? [looseOf(models[0]!, random)] : [];
  const [first] = models;
  return {
    models,
    items: thinned([...units, ...loose], 3),
    parts: [
      { id: 'chip', stock: whole(random, 0, 1), keptMinor: whole(random, 0, 60), fills: [] },
      {
        id: 'new one',
        stock: random() < 0.2 ? 1 : 0,
        keptMinor: whole(random, 0, 200),
        fills: [{ model: first!.id, slot: first!.slots[0]!.id, chance: random() < 0.5 ? 1 : 0.9, minutes: 4 }],
      },
    ],
    suppliers: ['near', 'far'].map((id, s) => ({
      id,
      postageMinor: whole(random, 0, 400),
      days: s * 10,
      offers: [
        { part: 'chip', unitMinor: whole(random, 20, 300), least: whole(random, 1, 2) },
        ...(random() < 0.6 ? [{ part: 'new one', unitMinor: whole(random, 800, 2500), least: 1 }] : []),
      ],
    })),
    limits,
    wishes: { hourMinor: 1200, riskShare: 0, dayMinor: whole(random, 0, 10), withinDays: 30 },
  };
}

function modelOf(m: number, random: RandomStream): PileModel {
  const slots = ['a', 'b', 'c'].slice(0, whole(random, 2, 3));
  const left = (most: number) => ({ soldMinor: whole(random, 0, most), keptMinor: whole(random, 0, most), scrapMinor: 0 });
  return {
    id: `model ${m}`,
    slots: slots.map((id) => ({ id, works: left(700), failed: left(80) })),
    buildMinutes: whole(random, 10, 50),
    soldMinor: whole(random, 2500, 9000),
    eachFurther: random() < 0.5 ? 1 : 0.9,
    original: random() < 0.5 ? { slots: slots.slice(0, 2), moreMinor: whole(random, 100, 1500) } : { slots: [], moreMinor: 0 },
    priceSpread: 0,
  };
}

function unitOf(i: number, model: PileModel, random: RandomStream): PileItem {
  return {
    id: `unit ${i}`,
    model: model.id,
    assemblies: model.slots.flatMap(({ id }) => (random() < 0.1 ? [] : [assemblyOf(id, random)])),
    whole: { asIsMinor: whole(random, 100, 1500), openMinutes: whole(random, 0, 12) },
    ...(random() < 0.05 ? { keep: true } : {}),
  };
}

const looseOf = (model: PileModel, random: RandomStream): PileItem => ({
  id: 'loose one',
  model: model.id,
  assemblies: [assemblyOf(model.slots.at(-1)!.id, random)],
});

function assemblyOf(slot: string, random: RandomStream): Assembly {
  const kind = random();
  if (kind < 0.45) return { slot, faults: { works: 1 }, remedies: random() < 0.25 ? [takingChip(random)] : [] };
  if (kind < 0.55) return { slot, faults: { dead: 1 }, remedies: [] };
  const works = 0.3 * random();
  const dirty = (1 - works) * random();
  const started = random() < 0.15 ? { started: { remedy: 'clean', switchMinor: whole(random, 50, 600) } } : {};
  return { slot, faults: { works, dirty, dead: 1 - works - dirty }, remedies: remediesOf(random), ...started };
}

const remedy = (id: string, mends: Record<string, number>, harm: number, random: RandomStream, more: Partial<Remedy> = {}): Remedy => ({
  id,
  mends,
  harm,
  costMinor: whole(random, 0, 200),
  minutes: whole(random, 5, 40),
  minutesSpread: 0,
  uses: {},
  gives: {},
  ...more,
});

const takingChip = (random: RandomStream): Remedy => remedy('take the chip', {}, 1, random, { gives: { chip: 1 } });

const remediesOf = (random: RandomStream): Remedy[] => [
  remedy('clean', { dirty: 0.5 + 0.5 * random() }, 0.05, random),
  remedy('new chip', { dirty: 0.6, dead: 0.4 + 0.6 * random() }, 0.1, random, { uses: { chip: 1 } }),
];

/** At most so many assemblies with remedies, so that every plan can be tried; the others keep what they are. */
function thinned(items: readonly PileItem[], most: number): PileItem[] {
  let left = most;
  return items.map((item) => ({
    ...item,
    assemblies: item.assemblies.map((assembly) =>
      assembly.remedies.length > 0 && left-- <= 0 ? { slot: assembly.slot, faults: assembly.faults, remedies: [] } : assembly,
    ),
  }));
}
