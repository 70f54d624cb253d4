import Papa from 'papaparse';
import { csvLines as linesBy } from '../../bench/csv/csv-lines.ts';
import type { CsvLine } from '../../bench/csv/csv-table.ts';

/** The lines of a CSV text. */
export const csvLines = (text: string): CsvLine[] => linesBy(text, (plain, options) => void Papa.parse<string[]>(plain, options));
