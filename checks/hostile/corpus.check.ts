import { expect, it } from 'vitest';
import { csvText } from '../../src/bench/csv/csv-text.ts';
import { readCsv } from '../../src/edges/models/read-csv.ts';
import { meetFiles } from './local-corpus.ts';
import { sendCorpus } from './server-corpus.ts';

it('the server refuses everything hostile that can be sent to it with a sentence, writes nothing, and stays within bounds', async () => {
  const { met, written, peakMb } = await sendCorpus('the corpus of the check');
  expect(met.filter(({ fault }) => fault !== null)).toEqual([]);
  expect(met.length).toBeGreaterThan(60);
  expect(written).toEqual([]);
  expect(peakMb).toBeLessThan(1500);
});

it('everything hostile that is read from a file is refused, or has an answer, in bounded time and memory', () => {
  const met = meetFiles();
  expect(met.filter(({ fault }) => fault !== null)).toEqual([]);
  expect(met.length).toBeGreaterThan(25);
});

it('no cell that leaves the bench for a spreadsheet begins a formula, whatever a thing is called', () => {
  const evil = ['=HYPERLINK("http://attacker.example")', '+1', '-1+1', '@SUM(A1)', '\t=1', '\r=1'];
  const cells = csvText(
    ['name'],
    evil.map((text) => [text]),
  );
  const lines = readCsv(cells).rows.slice(1, -1);
  expect(lines).toHaveLength(evil.length);
  for (const { cells: row } of lines) expect(row[0]).toMatch(/^'/);
});
