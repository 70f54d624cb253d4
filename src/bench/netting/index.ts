export { NOT_DRAWN, partialCircuit, type PartialCircuit, type PartialResult } from './partial-circuit.ts';
export { findMistakes, knownGoodOf, type FoundMistakes, type KnownGood, type OddReading } from './find-mistakes.ts';
export { mistakeEdits, type Candidate, type Mistake } from './mistake-edits.ts';
export { checkModel, type CheckQuestion } from './check-model.ts';
export { importPlacement, type ImportedPart, type ImportQuestion, type PlacementImport } from './import-placement.ts';
export { oddWords, readingWords } from './reading-words.ts';
export { placementView } from './placement-view.ts';
