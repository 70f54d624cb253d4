import { expect, it } from 'vitest';
import { openJournal } from './journal.ts';

const now = (): Date => new Date('2026-05-01T09:00:00Z');

it('tells of an error by its kind and its places, never by its words', () => {
  const lines: unknown[] = [];
  const journal = openJournal((fields, sentence) => void lines.push([sentence, fields]), now);
  journal.log('GET /api/items/:item failed', Object.assign(new TypeError('/home/anna/bench holds the blue player'), { code: 'EACCES' }));
  expect(journal.errors()).toEqual([{ at: '2026-05-01T09:00:00.000Z', sentence: 'GET /api/items/:item failed', kind: 'TypeError EACCES' }]);
  const said = JSON.stringify(lines);
  expect(said).not.toMatch(/anna|blue/);
  expect(said).toContain('src/apps/server/journal.test.ts');
});

it('keeps the newest fifty, and a code that stands for an error', () => {
  const journal = openJournal(() => undefined, now);
  for (let n = 0; n < 60; n++) journal.log(`trouble ${n}`, 'backup-folder-gone');
  journal.log('the last', 'Anna wrote this');
  expect(journal.errors()).toHaveLength(50);
  expect(journal.errors().slice(0, 2)).toMatchObject([
    { sentence: 'the last', kind: 'unknown' },
    { sentence: 'trouble 59', kind: 'backup-folder-gone' },
  ]);
});
