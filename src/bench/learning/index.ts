export { learnedModel, type LearnedModel } from './learned-model.ts';
export { learnedView } from './learned-view.ts';
export { learner, type KnownHere } from './known-here.ts';
export { claimKind, CLAIM_WORDS, type Honesty } from './honesty.ts';
export { readShared, type ReadShared } from './read-shared.ts';
export { sharedBundle } from './shared-bundle.ts';
export { withLearned } from './with-learned.ts';
