export { padsCsv, patternFromCsv, PAD_COLUMNS, type PadsRead } from './pads-csv.ts';
export { partsFromCsv, DRAWING_COLUMNS, LIST_PAD_COLUMNS, type ListedPart, type PartsRead } from './parts-list.ts';
export { patternOf, recordOf } from './pattern-record.ts';
export { NOT_TOLD, PART_KINDS, toldIn, TOLD_COLUMNS, withTold, type Told } from './told.ts';
export { given, whichFit, type Candidate } from './which-fit.ts';
export { answerFit, listed, ofBag } from './fit-question.ts';
export { fitSentence, reasonSentence, askSentence } from './fit-words.ts';
export { readPatternFile, type ReadFile } from './read-pattern.ts';
