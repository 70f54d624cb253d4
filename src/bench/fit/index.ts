export { patternFromCsv, PAD_COLUMNS, type PadsRead } from './pads-csv.ts';
export { fitSentence, reasonSentence, askSentence } from './fit-words.ts';
export { readPatternFile, type ReadFile } from './read-pattern.ts';
