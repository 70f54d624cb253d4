export {
  judgedCandidates,
  LEAST_CHANCE,
  MOST_MM,
  NEEDED_PX_PER_MM,
  proposeOutlines,
  type OutlineAnswer,
  type OutlineOptions,
  type ProposedOutline,
} from './propose-outlines.ts';
export { referencesBeside, type ReadWord } from './name-outlines.ts';
export { OUTLINE_KINDS, type OutlineKind } from './outline-kind.ts';
