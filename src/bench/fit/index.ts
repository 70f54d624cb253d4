export { patternFromCsv, PAD_COLUMNS, type PadsRead } from './pads-csv.ts';
export { fitSentence, reasonSentence, askSentence } from './fit-words.ts';
