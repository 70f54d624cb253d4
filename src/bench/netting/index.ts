export { partialCircuit, type PartialCircuit, type PartialResult } from './partial-circuit.ts';
export { findMistakes, type FoundMistakes, type KnownGood } from './find-mistakes.ts';
export { checkModel } from './check-model.ts';
export { importPlacement, type PlacementImport } from './import-placement.ts';
export { oddWords } from './reading-words.ts';
export { placementView } from './placement-view.ts';
export { markedPart, nodesOfPins } from './laid-parts.ts';
