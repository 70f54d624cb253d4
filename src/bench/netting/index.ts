export { NOT_DRAWN, partialCircuit, type PartialCircuit, type PartialResult } from './partial-circuit.ts';
