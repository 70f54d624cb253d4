import { isForeign, type BenchEvent, type Kind } from '../events/index.ts';
import type { LiveLog } from '../live/live-log.ts';
import { sentenceOf } from '../log-line.ts';
import { logWords } from '../log-words.ts';
import type { Model } from '../models/index.ts';
import type { Item } from '../state.ts';
import { dealWords, isDeal } from './deal-words.ts';
import { beforeAndAfter, photosAroundWork } from './photos-around-work.ts';
import type { ReportPhoto } from './report-view.ts';

/** What goes into a story beside what was found and done; none of it unless it is chosen. */
export interface StoryChoices {
  /** What it cost and brought. */
  readonly money: boolean;
  /** Who sold it and who bought it. */
  readonly persons: boolean;
  /** Notes, captions and remarks as they were typed: they may name people, too. */
  readonly words: boolean;
}

export interface StoryLine {
  readonly text: string;
  readonly photo: ReportPhoto | null;
}

/** The story of a unit from its log, day by day. */
export interface StoryView {
  readonly title: string;
  readonly intro: string;
  readonly days: readonly { readonly day: string; readonly lines: readonly StoryLine[] }[];
  readonly pair: { readonly before: ReportPhoto; readonly after: ReportPhoto } | null;
  /** Notes, captions and remarks that were left out. */
  readonly leftOut: number;
}

/** Kinds that tell of the unit itself. */
const TOLD: ReadonlySet<Kind> = new Set<Kind>([
  'item-received',
  'claim-made',
  'trial-done',
  'photo-taken',
  'finding-noted',
  'reading-taken',
  'step-done',
  'opened-to',
  'remedy-done',
  'transplant-done',
  'part-used',
  'proof-step-done',
  'test-done',
  'graded',
  'kept',
]);
/** Fields in which the person typed freely. */
const OWN_WORDS = ['text', 'condition', 'caption', 'reason'] as const;

/** The story of a unit, in the order of its log. What was taken back is not in it. */
export function unitStory(live: LiveLog, model: Model, item: Item, choices: StoryChoices): StoryView {
  const { state, byItem } = live;
  const log = byItem.get(item.id) ?? [];
  const counts = log.flatMap(({ event }) => (isForeign(event) || state.corrected.has(event.id) ? [] : [event]));
  const photos = photosAroundWork(item, log, state.corrected);
  const told = counts.filter((event) => isDeal(event) || TOLD.has(event.kind) || (event.kind === 'note-written' && choices.words));
  return {
    title: `The story of a ${model.file.name}`,
    intro: introOf(counts, item),
    days: byDay(told.map((event) => ({ day: event.at.slice(0, 10), line: lineOf(live, item, event, choices) }))),
    pair: hideWords(beforeAndAfter(photos), choices),
    leftOut: choices.words
      ? 0
      : counts.filter(({ kind, body }) => kind === 'note-written' || (TOLD.has(kind) && ownWords(body) !== '')).length,
  };
}

function lineOf({ state, models }: LiveLog, item: Item, event: BenchEvent, choices: StoryChoices): StoryLine {
  const words = logWords(state, models);
  const text = isDeal(event) ? dealWords(words, event, choices) : sentenceOf(words, choices.words ? event : withoutOwnWords(event));
  const photo = event.kind === 'photo-taken' ? item.photos.find(({ eventId }) => eventId === event.id) : undefined;
  return {
    text,
    photo: photo ? { hash: photo.hash, side: photo.side, caption: choices.words ? photo.caption : '', day: event.at.slice(0, 10) } : null,
  };
}

/** The event with what the person typed freely taken out of it. */
function withoutOwnWords(event: BenchEvent): BenchEvent {
  const emptied = Object.fromEntries(OWN_WORDS.filter((field) => field in event.body).map((field) => [field, '']));
  return { ...event, body: { ...event.body, ...emptied } } as BenchEvent;
}

const ownWords = (body: object): string => OWN_WORDS.map((field) => String((body as Record<string, unknown>)[field] ?? '')).join('');

function hideWords(pair: StoryView['pair'], { words }: StoryChoices): StoryView['pair'] {
  if (!pair || words) return pair;
  return { before: { ...pair.before, caption: '' }, after: { ...pair.after, caption: '' } };
}

function introOf(events: readonly BenchEvent[], item: Item): string {
  const [first, last] = [events[0], events.at(-1)];
  const span = first && last ? `From ${first.at.slice(0, 10)} to ${last.at.slice(0, 10)}` : 'Nothing happened yet';
  const hours = item.minutes >= 90 ? `${(item.minutes / 60).toFixed(1)} hours` : `${Math.round(item.minutes)} minutes`;
  const grade = item.grade ? (item.grade.grade === 'parts' ? ' It ended for parts.' : ` It ended at grade ${item.grade.grade}.`) : '';
  return `${span}, ${hours} at the bench.${grade}`;
}

function byDay(told: readonly { readonly day: string; readonly line: StoryLine }[]): StoryView['days'] {
  const days = new Map<string, StoryLine[]>();
  for (const { day, line } of told) days.set(day, [...(days.get(day) ?? []), line]);
  return [...days].map(([day, lines]) => ({ day, lines }));
}
