import type { DeviceModel, Fault } from './model.ts';
import { normalise } from './posterior-over-sets.ts';
import { productByState, type StateSpace } from './state-space.ts';

/**
 * Of two units that chance made alike, one with nothing wrong is sold as faulty so many times less often than one with a
 * fault: its seller would have to err. Common practice, no source.
 */
const WELL_SOLD_AS_FAULTY = 0.1;

/**
 * Weights before any evidence: faults come independently at their rates, cut off at two at once, given that the unit is sold
 * as faulty; "not in the model" has exactly its own rate. A fault that no function shows brings a unit to market as seldom as none does.
 * One weight a state, summing to 1.
 */
export function priorWeights(model: DeviceModel, space: StateSpace): Float64Array {
  const odds = Float64Array.from(model.faults, ({ rate }) => Math.min(rate, 0.99) / (1 - Math.min(rate, 0.99)));
  const weights = productByState(space, odds);
  const quiet = productByState(
    space,
    Float64Array.from(model.faults, (fault) => 1 - showing(fault)),
  );
  for (let state = 0; state < space.size; state++) weights[state]! *= 1 - (1 - WELL_SOLD_AS_FAULTY) * quiet[state]!;
  weights[space.unknown] = 0;
  normalise(weights);
  for (let state = 0; state < space.size; state++) weights[state]! *= 1 - model.unknownRate;
  weights[space.unknown] = model.unknownRate;
  return weights;
}

/** Chance that a fault keeps some function from working; certain where its circuit does not tell. */
function showing({ works }: Fault): number {
  return works ? 1 - Math.min(1, ...Object.values(works)) : 1;
}
