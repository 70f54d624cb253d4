import { describe, expect, it } from 'vitest';
import { openBench } from '../open-bench.ts';
import { oneLamp, testId, testLog, type Step } from '../testing/events.ts';
import { memoryStore } from '../testing/memory-store.ts';
import { smallModels } from '../testing/small-model.ts';

const clock = { now: () => new Date('2026-03-01T10:00:00Z'), newId: () => testId(5000) };
const photo = (letter: string, side: string, caption = ''): Step => [
  'photo-taken',
  { item_id: 'lamp-a', photo: letter.repeat(64), side, caption },
];
const pass = (step: string): Step => ['proof-step-done', { item_id: 'lamp-a', step, outcome: 'pass' }];
const bulb: Step = ['remedy-done', { item_id: 'lamp-a', remedy: 'new-bulb', minutes: 30, outcome: 'mended', text: 'for Aunt Morag' }];
const charge: Step = [
  'test-done',
  {
    item_id: 'lamp-a',
    test: 'display',
    verdict: 'good',
    text: 'No dead pixel.',
    values: [{ name: 'Dead pixels', value: 0, unit: '', criterion: 'picture' }],
  },
];

const benchWith = (...steps: readonly Step[]) => {
  const bench = openBench({ store: memoryStore(), models: smallModels(), clock, device: 'bench-1', version: '0' });
  const recorded = bench.record(testLog(...oneLamp, ...steps).map(({ event }) => event));
  if (!recorded.ok) throw new Error(recorded.message);
  return bench;
};
const reportOf = (...steps: readonly Step[]) => benchWith(...steps).conditionReport('#1', (id) => `https://bench.example/${id}`)!;
const PLAIN = { money: false, persons: false, words: false };
const storyOf = (choices: Partial<typeof PLAIN>, ...steps: readonly Step[]) => benchWith(...steps).story('#1', { ...PLAIN, ...choices })!;
const told = (story: ReturnType<typeof storyOf>): string => JSON.stringify(story);

describe('a condition report', () => {
  it('parts the photos by the work, and puts those taken back nowhere', () => {
    const { photos } = reportOf(
      photo('a', 'front'),
      photo('b', 'back'),
      ['correction', { corrects: testId(4) }],
      bulb,
      photo('c', 'front'),
      bulb,
      photo('d', 'front'),
    );
    const hashes = [photos.before, photos.during, photos.after].map((each) => each.map(({ hash }) => hash[0]));
    expect(hashes).toEqual([['a'], ['c'], ['d']]);
  });

  it('says what was replaced, what is missing, and the way to the file of the unit', () => {
    const out: Step = ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }];
    const report = reportOf(bulb, out);
    expect(report.parts).toEqual([
      { name: 'Battery', state: 'its own' },
      { name: 'Board', state: 'missing' },
    ]);
    expect(report.replaced).toEqual(['New bulb']);
    expect(report.url).toBe('https://bench.example/lamp-a');
  });

  it('is not ready with a step open or failed, and carries the reason of one that was signed', () => {
    const steps = reportOf().tests.length;
    expect(steps).toBeGreaterThan(2);
    const signed: Step = [
      'proof-step-done',
      { item_id: 'lamp-a', step: 'works.light', outcome: 'signed-off', reason: 'flickers when cold' },
    ];
    const most = [pass('works.power'), signed, pass('no-hot-spots'), pass('screws-back')];
    expect(reportOf(...most).ready).toBe(false);
    const whole = reportOf(...most, pass('battery-door'));
    expect(whole.ready).toBe(true);
    expect(whole.tests.find(({ name }) => name === 'Light')).toMatchObject({ outcome: 'signed-off', reason: 'flickers when cold' });
    expect(reportOf(...most, ['proof-step-done', { item_id: 'lamp-a', step: 'battery-door', outcome: 'fail' }]).ready).toBe(false);
  });

  it('shows what was measured since the last work, not before it', () => {
    expect(reportOf(bulb, charge).measured).toEqual([
      { name: 'Display check', verdict: 'good', text: 'No dead pixel.', values: ['Dead pixels 0'] },
    ]);
    expect(reportOf(charge, bulb).measured).toEqual([]);
  });

  it('shows each criterion that was judged with the grade that it reaches, and what was not looked at', () => {
    const proved = ['works.power', 'works.light', 'no-hot-spots', 'screws-back', 'battery-door'].map(pass);
    const judged = [
      { criterion: 'marks', value: 1 },
      { criterion: 'picture', value: 5 },
    ];
    const { grade } = reportOf(...proved, ['graded', { item_id: 'lamp-a', scale: 'salvor-1', grade: 'C', text: 'scuffed', judged }]);
    expect(grade).toMatchObject({ grade: 'C', scale: 'salvor-1', text: 'scuffed' });
    expect(grade!.criteria.map(({ grade: reached }) => reached)).toEqual(['C', 'B']);
    expect(grade!.criteria[1]!.found).toBe('light');
    expect(grade!.open).toContain('Battery');
  });

  it('is there for a unit only', () => {
    expect(benchWith().conditionReport('nobody', String)).toBeNull();
  });
});

describe('the story of a unit', () => {
  const steps: readonly Step[] = [
    photo('a', 'front', 'as it came from Aunt Morag'),
    bulb,
    photo('b', 'front'),
    ['note-written', { item_id: 'lamp-a', text: 'ask Hamish' }],
    ['sold', { item_id: 'lamp-a', as: 'for-parts', price_minor: 1250, currency: 'GBP', buyer: 'Isla of Larkhill' }],
  ];

  it('tells what was done with its time, and neither money nor names nor own words', () => {
    const story = storyOf({}, ...steps);
    expect(story.intro).toContain('30 minutes');
    expect(told(story)).toContain('New bulb');
    expect(told(story)).not.toMatch(/GBP|marsh-lane|Isla|Morag|Hamish/);
    expect(story.leftOut).toBe(3);
  });

  it('tells each of them where it is chosen, and only that', () => {
    expect(told(storyOf({ money: true }, ...steps))).toMatch(/Sold for 12.50 GBP/);
    expect(told(storyOf({ money: true }, ...steps))).not.toMatch(/marsh-lane|Isla|Morag/);
    expect(told(storyOf({ persons: true }, ...steps))).toMatch(/Bought from marsh-lane\..*Sold to Isla of Larkhill\./);
    expect(told(storyOf({ persons: true }, ...steps))).not.toMatch(/GBP|Morag/);
    expect(told(storyOf({ words: true }, ...steps))).toMatch(/Morag.*Hamish/);
  });

  it('lays the last photo before the work beside the first after it of the same side', () => {
    expect(storyOf({}, ...steps).pair).toMatchObject({ before: { hash: 'a'.repeat(64) }, after: { hash: 'b'.repeat(64) } });
    expect(storyOf({}, photo('a', 'front'), bulb, photo('b', 'back')).pair).toBeNull();
  });

  it('leaves out what was taken back', () => {
    expect(told(storyOf({}, bulb, ['correction', { corrects: testId(3) }]))).not.toContain('New bulb');
  });
});
