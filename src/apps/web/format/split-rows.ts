import Papa from 'papaparse';
import type { SplitRows } from '../../../core/rework/index.ts';

/** Cells of a table, row by row. */
export const splitRows: SplitRows = (text, delimiter) => Papa.parse<string[]>(text, { delimiter, newline: '\n' }).data;
