import { z } from 'zod';
import { Id, Line } from '../events/index.ts';

/** The section `circuit` of a model file at level 2: which files hold netlist and placement, and what of the device hangs on which part of them. */

const fileName = (ending: string) =>
  z
    .string()
    .regex(
      new RegExp(`^[A-Za-z0-9][A-Za-z0-9_-]{0,63}\\.${ending}$`),
      `must be the name of a file beside this one that ends in .${ending}`,
    );
const Node = z
  .string()
  .regex(/^[a-z0-9_][a-z0-9_.+#-]{0,63}$/, 'must be the name of a node in lower case; ground is "0"')
  .meta({ description: 'Node of the netlist in lower case; ground is "0"' });
const PartName = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9_.]{0,63}$/, 'must be the name of a part of the netlist, or a reference of the placement')
  .meta({ description: 'Part of the netlist (RF1), or a reference of the placement (F1), which stands for all its parts' });
const StateId = Id.meta({ description: 'Power state of the circuit' });

export const CircuitState = z.strictObject({
  id: Id,
  name: Line,
  supplies: z
    .record(PartName, z.number())
    .default({})
    .meta({ description: 'Supplies that are connected, V (of a current source A); all others are not there' }),
  set: z
    .record(PartName, z.union([z.number().positive(), z.literal('out')]))
    .default({})
    .meta({
      description: 'What else differs from the netlist as written: a value (Ω, A, V), or `out` for a part that is open or not there',
    }),
});

export const ProbeSpec = z.strictObject({
  state: StateId.optional().meta({
    description: 'Power state in which it is measured; the default is that named as the `power` of the point',
  }),
  red: Node.optional().meta({ description: 'Where the red lead goes (volts, ohms, diode)' }),
  black: Node.optional().meta({ description: 'Where the black lead goes; the default is ground' }),
  supply: PartName.optional().meta({ description: 'For amps: the supply whose current the meter shows' }),
});

const limits = { min: z.number().optional(), max: z.number().optional() };
const state = StateId.optional().meta({
  description: 'Power state in which it must hold; the default is that of the function (ohms: off)',
});

/** One need of a function. All needs of a function must hold. */
export const CircuitNeed = z.union([
  z.strictObject({
    rail: Node,
    within: z.number().positive().max(1).meta({ description: 'Share of the nominal voltage of the rail' }),
    state,
  }),
  z.strictObject({ volts: Node, to: Node.optional(), ...limits, state }),
  z.strictObject({ ohms: Node, to: Node.optional(), ...limits, state }),
  z.strictObject({
    amps: PartName.meta({ description: 'A supply; what it gives counts as positive, what charges it as negative' }),
    ...limits,
    state,
  }),
  z.strictObject({ part: PartName.meta({ description: 'A reference whose part must have no fault' }) }),
]);
export type CircuitNeed = z.infer<typeof CircuitNeed>;

export const CircuitSpec = z.strictObject({
  netlist: fileName('cir').meta({ description: 'Netlist in the SPICE notation, beside this file' }),
  placement: fileName('csv').meta({ description: 'Places of the parts, beside this file' }),
  rails: z
    .record(Node, z.number().positive())
    .default({})
    .meta({ description: 'Supply rails: node and nominal voltage in V, in the order of supply' }),
  states: z
    .array(CircuitState)
    .min(1)
    .meta({ description: 'Power states; `off` and those that points name as their `power` must be among them' }),
  points: z.record(Id, ProbeSpec).default({}).meta({ description: 'Where the leads go, by point' }),
  functions: z
    .record(Id, z.strictObject({ state: StateId, needs: z.array(CircuitNeed).min(1) }))
    .default({})
    .meta({
      description: 'What each function needs of the circuit, by function; its blocks still count for what the netlist does not hold',
    }),
});
export type CircuitSpec = z.infer<typeof CircuitSpec>;
