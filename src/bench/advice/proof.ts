import type { Model } from '../models/index.ts';
import type { HistoryEntry, Item } from '../state.ts';
import type { ProofView } from '../views/index.ts';
import { PROOF_OF_FUNCTION } from './evidence.ts';
import { measuredFor, testsFor } from './proof-measured.ts';
import { becauseOf, limitsOf } from './proof-words.ts';
import { touchedByWork } from './touched-by-work.ts';

type Step = Omit<ProofView['steps'][number], 'outcome' | 'reason' | 'because' | 'measured' | 'measured_by'>;

/**
 * The tests that a unit must pass before it leaves, each with where it stands, its limits, and what the work touched that
 * it is for. An assembly by itself has none. `life` is the unit's history with that of what sits in it.
 */
export function proofOf(item: Item, model: Model | null, life: readonly HistoryEntry[] = item.history): ProofView {
  const specs = item.kind === 'unit' ? stepsOf(model) : [];
  const touched = model && specs.length > 0 ? touchedByWork(model, life) : null;
  const steps = specs.map((step) => {
    const done = item.proof.get(step.id);
    const because = touched && model ? becauseOf(model, step.id, touched) : [];
    return {
      ...step,
      because,
      measured: measuredFor(step.id, item.tests),
      measured_by: testsFor(step.id),
      outcome: done?.outcome ?? ('open' as const),
      reason: done?.reason ?? '',
    };
  });
  return { steps, ready: steps.every(({ outcome }) => outcome === 'pass' || outcome === 'signed-off') };
}

const known = new WeakMap<Model, readonly Step[]>();

function stepsOf(model: Model | null): readonly Step[] {
  if (!model) return [NO_HOT_SPOTS, screwsBack(0)];
  const before = known.get(model);
  if (before) return before;
  const steps = [...functionSteps(model), ...baseSteps(model)];
  known.set(model, steps);
  return steps;
}

const functionSteps = (model: Model): Step[] =>
  model.file.functions.map((fn) => ({
    id: `${PROOF_OF_FUNCTION}${fn.id}`.slice(0, 64),
    name: fn.name,
    how: `${fn.question ?? `Does it work: ${fn.name}?`} Try it for some minutes, with the unit's own parts and no known-good accessory in their place.`,
    limits: limitsOf(model, fn.id),
    cautions: [],
  }));

function baseSteps({ file }: Model): Step[] {
  const charges = file.functions.some((fn) => /charg/i.test(`${fn.id} ${fn.name}`));
  const rechargeable = file.cell ? file.cell.chemistry === 'li-ion' || file.cell.chemistry === 'nimh' : charges;
  const lithium = file.cell ? file.cell.chemistry === 'li-ion' : charges;
  const hasBattery = file.cell !== undefined || file.blocks.some((block) => /batter|cell/i.test(block.id));
  return [
    ...(rechargeable ? [safeCharging(lithium, file.cell?.volts)] : []),
    NO_HOT_SPOTS,
    screwsBack(file.fasteners.reduce((sum, fastener) => sum + fastener.count, 0)),
    ...(hasBattery ? [BATTERY_DOOR] : []),
  ];
}

const safeCharging = (lithium: boolean, volts: number | undefined): Step => ({
  id: 'charges-safely',
  name: 'Charges safely under watch',
  how:
    'Charge it on a surface that cannot burn and stay with it for twenty minutes: the current settles within the rating of the charger, ' +
    'the cell stays cool and flat. Stop at heat, smell, hissing or swelling. Local rules and licensed practice come first.',
  limits: [
    lithium
      ? `The charger holds the voltage printed on the cell${volts === undefined ? '' : ` (nominal ${volts} V)`} to 0.05 V, never more, and ends by itself at a tenth of its current or less.`
      : 'It ends by itself, and the cell is no more than 15 K warmer than when it began.',
    'The cell stays between 10 and 45 °C.',
  ],
  cautions: lithium ? ['lithium-cell'] : [],
});

const NO_HOT_SPOTS: Step = {
  id: 'no-hot-spots',
  name: 'No hot spot after ten minutes',
  how: 'Let it run for ten minutes, then feel the whole shell: nowhere is it too warm to keep a finger on. Switch off at once if it is.',
  limits: ['No place that a hand rests on is above 43 °C.'],
  cautions: [],
};

const screwsBack = (count: number): Step => ({
  id: 'screws-back',
  name: 'All screws are back and nothing rattles',
  how: `${count > 0 ? `Count them: ${count}. ` : 'No screw is left on the mat. '}The shell closes without a gap; shaken gently, nothing rattles.`,
  limits: [count > 0 ? `${count} of ${count} are in; none is left on the mat.` : 'None is left on the mat.'],
  cautions: [],
});

const BATTERY_DOOR: Step = {
  id: 'battery-door',
  name: 'The battery door is there and holds',
  how: 'Close it, turn the unit over and tap it: the door stays shut and the battery keeps contact.',
  limits: ['It neither opens nor lets the unit go off, three times of three.'],
  cautions: [],
};
