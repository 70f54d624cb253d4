import type { Model } from '../models/index.ts';
import type { Item } from '../state.ts';
import type { ProofView } from '../views/index.ts';
import { PROOF_OF_FUNCTION } from './evidence.ts';

type Step = Omit<ProofView['steps'][number], 'outcome' | 'reason'>;

/** The tests that a unit must pass before it leaves, each with where it stands. An assembly by itself has none. */
export function proofOf(item: Item, model: Model | null): ProofView {
  const specs = item.kind === 'unit' ? stepsOf(model) : [];
  const steps = specs.map((step) => {
    const done = item.proof.get(step.id);
    return { ...step, outcome: done?.outcome ?? ('open' as const), reason: done?.reason ?? '' };
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
    name: `${fn.name} works`,
    how: `${fn.question ?? `Does it work: ${fn.name}?`} Try it for some minutes, with the unit's own parts and no known-good accessory in their place.`,
    cautions: [],
  }));

function baseSteps({ file }: Model): Step[] {
  const charges = file.functions.some((fn) => /charg/i.test(`${fn.id} ${fn.name}`));
  const rechargeable = file.cell ? file.cell.chemistry === 'li-ion' || file.cell.chemistry === 'nimh' : charges;
  const lithium = file.cell ? file.cell.chemistry === 'li-ion' : charges;
  const hasBattery = file.cell !== undefined || file.blocks.some((block) => /batter|cell/i.test(block.id));
  return [
    ...(rechargeable ? [safeCharging(lithium)] : []),
    NO_HOT_SPOTS,
    screwsBack(file.fasteners.reduce((sum, fastener) => sum + fastener.count, 0)),
    ...(hasBattery ? [BATTERY_DOOR] : []),
  ];
}

const safeCharging = (lithium: boolean): Step => ({
  id: 'charges-safely',
  name: 'Charges safely under watch',
  how:
    'Charge it on a surface that cannot burn and stay with it for twenty minutes: the current settles within the rating of the charger, ' +
    'the cell stays cool and flat. Stop at heat, smell, hissing or swelling. Local rules and licensed practice come first.',
  cautions: lithium ? ['lithium-cell'] : [],
});

const NO_HOT_SPOTS: Step = {
  id: 'no-hot-spots',
  name: 'No hot spot after ten minutes',
  how: 'Let it run for ten minutes, then feel the whole shell: nowhere is it too warm to keep a finger on. Switch off at once if it is.',
  cautions: [],
};

const screwsBack = (count: number): Step => ({
  id: 'screws-back',
  name: 'All screws are back and nothing rattles',
  how: `${count > 0 ? `Count them: ${count}. ` : 'No screw is left on the mat. '}The shell closes without a gap; shaken gently, nothing rattles.`,
  cautions: [],
});

const BATTERY_DOOR: Step = {
  id: 'battery-door',
  name: 'The battery door is there and holds',
  how: 'Close it, turn the unit over and tap it: the door stays shut and the battery keeps contact.',
  cautions: [],
};
