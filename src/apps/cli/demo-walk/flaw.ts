import type { Behaviour, DeviceModel, Fault } from '../../../core/diagnosis/model.ts';
import type { RandomStream } from '../../../core/numeric/index.ts';

/** One thing that is really wrong with a unit or an assembly of the walk. It behaves and looks the same each time. */
export interface Flaw {
  readonly fault: Fault;
  /** Name in plain words, for the end of the walk. */
  readonly name: string;
  readonly behaves: Map<string, Behaviour>;
  /** What one sees on looking; undefined until the first look. */
  look: string | undefined;
}

const MOST_FLAWS = 2;

/**
 * What is wrong with a unit that somebody sells as faulty: each fault of the model by its rate, drawn again until there
 * are one or two, now and then something that the model does not know.
 */
export function drawFlaws(device: DeviceModel, nameOf: (fault: string) => string, random: RandomStream): Flaw[] {
  if (random() < device.unknownRate) return [unknownFlaw(device, random)];
  for (;;) {
    const faults = device.faults.filter((fault) => random() < fault.rate);
    if (faults.length > 0 && faults.length <= MOST_FLAWS) return faults.map((fault) => flawOf(fault, nameOf(fault.id)));
  }
}

export const flawOf = (fault: Fault, name: string): Flaw => ({ fault, name, behaves: new Map(), look: undefined });

/** A block fails for a reason that nothing in the model shows or mends. */
export function unknownFlaw(device: DeviceModel, random: RandomStream, block?: string): Flaw {
  const blocks = [...new Set(device.functions.flatMap((each) => each.needs.flat()))];
  return flawOf(
    {
      id: 'not-in-the-model',
      block: block ?? blocks[Math.floor(random() * blocks.length)]!,
      rate: 0,
      behaves: { works: 0, fails: 1, 'comes-and-goes': 0 },
      seen: {},
      shifts: {},
    },
    'something that the model does not know',
  );
}

/** How a function that needs the block of a flaw behaves: drawn on the first try, the same ever after. */
export function behaviourOf(flaw: Flaw, fn: string, random: RandomStream): Behaviour {
  const known = flaw.behaves.get(fn);
  if (known) return known;
  const { works, fails } = flaw.fault.behaves;
  const drawn = random();
  const behaviour = drawn < works ? 'works' : drawn < works + fails ? 'fails' : 'comes-and-goes';
  flaw.behaves.set(fn, behaviour);
  return behaviour;
}

/** What one sees of a flaw at its block: drawn on the first look, the same ever after. */
export function lookOf(flaw: Flaw, random: RandomStream): string {
  if (flaw.look !== undefined) return flaw.look;
  let drawn = random();
  flaw.look = 'nothing-wrong';
  for (const [kind, chance] of Object.entries(flaw.fault.seen)) {
    if (drawn < chance) {
      flaw.look = kind;
      break;
    }
    drawn -= chance;
  }
  return flaw.look;
}
