import { expect, it } from 'vitest';
import { readListing } from '../../../bench/scout/index.ts';
import { highlights } from './highlights.ts';

const MODEL = {
  functions: [
    { id: 'starts', name: 'Starts' },
    { id: 'sound', name: 'Sound' },
    { id: 'picture', name: 'Picture' },
  ],
  blocks: [],
};

it('cuts a text at the words that were read, and loses none of it', () => {
  const text = 'Hello. It turns on, sound and picture are dead, bye.';
  const cut = highlights(text, readListing(text, MODEL).claims);
  expect(cut.map((each) => each.text).join('')).toBe(text);
  expect(cut.filter(({ read }) => read).map((each) => each.text)).toEqual(['turns on', 'sound and picture are dead']);
  expect(cut.map(({ from }) => from)).toEqual([...new Set(cut.map(({ from }) => from))]);
});

it('leaves a text alone in which nothing was read', () => {
  expect(highlights('Hello.', [])).toEqual([{ from: 0, text: 'Hello.', read: null }]);
  expect(highlights('', [])).toEqual([]);
});
