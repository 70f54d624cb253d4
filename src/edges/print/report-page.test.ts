import type { ReportView, StoryView } from '../../bench/ports.ts';
import { expect, it } from 'vitest';
import { openPrinter } from './index.ts';

const REPORT: ReportView = {
  title: 'Condition report: Pocket lamp',
  unit: '#1 <b>Lamp</b>',
  bench: 'The bench',
  day: '2026-01-02',
  grade: null,
  photos: { before: [{ hash: 'aa', side: 'front', caption: '"x" onerror=alert(1)', day: '2026-01-01' }], during: [], after: [] },
  parts: [{ name: 'Board', state: 'its own' }],
  replaced: [],
  work: ['New bulb & socket'],
  ready: false,
  tests: [{ name: 'Light works', outcome: 'signed-off', limits: ['Three of three.'], measured: ['Level -12 dB'], reason: '<script>' }],
  measured: [],
  cautions: [],
  url: 'http://127.0.0.1:4780/bench/lamp-a',
};
const STORY: StoryView = {
  title: 'The story of a Pocket lamp',
  intro: 'From then to now.',
  days: [{ day: '2026-01-01', lines: [{ text: 'It said <hello>.', photo: null }] }],
  pair: { before: REPORT.photos.before[0]!, after: { ...REPORT.photos.before[0]!, hash: 'bb', day: '2026-01-03' } },
  leftOut: 0,
};
const photo = async (hash: string) => ({ bytes: new TextEncoder().encode(hash), mediaType: 'image/jpeg' });

it('text of the person stands in a page as text, and pictures stand inside it', async () => {
  const page = await openPrinter().reportPage(REPORT, photo);
  expect(page).toContain('#1 &lt;b&gt;Lamp&lt;/b&gt;');
  expect(page).toContain('not passed, signed off: &lt;script&gt;');
  expect(page).toContain('<figcaption>front, &quot;x&quot; onerror=alert(1), 2026-01-01</figcaption>');
  expect(page).toContain(`src="data:image/jpeg;base64,${Buffer.from('aa').toString('base64')}"`);
  expect(page).toContain('Not ready');
  expect(page).toContain("script-src 'none'");
  expect(page).not.toMatch(/(src|href)="(https?:)?\/\//);
});

it('a story runs its own slider and nothing else', async () => {
  const page = await openPrinter().storyPage(STORY, photo);
  expect(page).toMatch(/<input type="range"[^>]* aria-label="[^"]+"/);
  expect(page).toMatch(/script-src 'sha256-[A-Za-z0-9+/]{43}='/);
  expect(page).toContain('It said &lt;hello&gt;.');
  expect(await openPrinter().storyPage({ ...STORY, pair: null }, photo)).not.toContain('<script>');
});
