import type { FindingKind, Outcome } from '../events/index.ts';
import type { Mark } from './marks.ts';
import type { Token } from './tokens.ts';
import type { Topic } from './topics.ts';

/** What a clause says of a topic, before it is put in the words of a model. */
export type Said = { readonly from: number; readonly to: number; readonly rule: string } & (
  | { readonly is: 'behaves'; readonly topic: Topic | null; readonly says: Outcome; readonly whole: boolean }
  | { readonly is: 'finds'; readonly topic: Topic | null; readonly sees: FindingKind }
  | { readonly is: 'untested' }
  | { readonly is: 'as-is' }
  | { readonly is: 'taught'; readonly claim: Extract<Mark, { is: 'taught' }>['claim'] }
  | { readonly is: 'denied' }
  | { readonly is: 'condition' }
  | { readonly is: 'part-untested' }
);

export interface ClauseReading {
  readonly said: readonly Said[];
  readonly hedged: boolean;
  /** What it was about, for a clause after it that names nothing. */
  readonly topics: readonly Topic[];
}

type TopicNamed = (id: string) => Topic;
type RuleMark = Extract<Mark, { is: 'rule' }>;
type TopicMark = Extract<Mark, { is: 'topic' }>;
const isRule = (mark: Mark, ...does: readonly string[]): mark is RuleMark => mark.is === 'rule' && does.includes(mark.rule.does);
const isTopic = (mark: Mark): mark is TopicMark => mark.is === 'topic';
const OPPOSITE: Readonly<Record<Outcome, Outcome>> = { works: 'fails', fails: 'works', 'comes-and-goes': 'works' };

/** How far a "not" reaches, in tokens, when nothing stands between. */
const REACH = 6;

/**
 * What the marks of one clause say. A state belongs to the topics before it, else to those behind it, else to what the sentence was about. An odd number of negations between a state and
 * the one before turns it round.
 */
export function readClause(
  whole: readonly Mark[],
  tokens: readonly Token[],
  before: readonly Topic[],
  topicNamed: TopicNamed,
): ClauseReading {
  const all = whole.filter((mark, i) => !isAside(whole, i, tokens) && !isPurpose(whole, i, tokens));
  const stop = all.findIndex((mark, i) => isRule(mark, 'condition') && (mark.rule.name !== 'when' || all.slice(0, i).some(isState)));
  const marks = stop < 0 ? all : all.slice(0, stop);
  const hedged = marks.some((mark) => isRule(mark, 'hedge', 'past'));
  const topics = marks.filter(isTopic).map(({ topic }) => topic);
  const said: Said[] = stop < 0 ? [] : [{ is: 'condition', from: all[stop]!.from, to: all[stop]!.to, rule: 'condition' }];
  const used = new Set<Mark>();
  const everything = marks.find((mark) => isRule(mark, 'whole'));
  marks.forEach((mark, i) => {
    if (isRule(mark, 'behaves', 'past')) said.push(...behaviour(mark, i, marks, used, before, topicNamed, everything));
    if (isRule(mark, 'finds')) said.push(...finding(mark as RuleMark, i, marks, used, before, topicNamed));
    if (isRule(mark, 'lacks', 'has')) said.push(...lacking(mark as RuleMark, i, marks, used, before, topicNamed));
    if (isRule(mark, 'untested')) said.push({ is: untested(i, marks, used), from: mark.from, to: mark.to, rule: 'untested' });
    if (isRule(mark, 'as-is')) said.push({ is: 'as-is', from: mark.from, to: mark.to, rule: 'as is' });
    if (mark.is === 'taught') said.push(taught(mark, negations(marks, i, used) % 2 === 1));
  });
  if (everything && !said.some((each) => each.is === 'behaves' && each.whole)) said.push(wholeWorks(everything));
  said.push(...exceptions(marks), ...bareNo(marks, used));
  const facts = said.flatMap((each) => (each.is === 'behaves' && each.topic ? [each.topic] : []));
  return { said, hedged, topics: topics.length > 0 ? topics : facts };
}

const ASIDE = /^(from|of|in|on|across|near|at|over)$/;
const AND = /^(and|or|nor)$/;

/** "sound from the speaker": the second only says which or where, unless "and" joins them. */
function isAside(marks: readonly Mark[], i: number, tokens: readonly Token[]): boolean {
  const mark = marks[i]!;
  const earlier = marks.slice(0, i).findLast(isTopic);
  if (!isTopic(mark) || !earlier || earlier.topic.id === 'unit') return false;
  const between = tokens.slice(earlier.to, mark.from).map(({ word }) => word);
  return between.some((word) => ASIDE.test(word)) && !between.some((word) => AND.test(word));
}

/** "no cable to charge it": what a missing thing would be for is no claim. */
function isPurpose(marks: readonly Mark[], i: number, tokens: readonly Token[]): boolean {
  const [no, thing] = [marks[i - 2], marks[i - 1]];
  return isState(marks[i]!) && !!no && !!thing && isRule(no, 'not') && isTopic(thing) && tokens[marks[i]!.from - 1]?.word === 'to';
}

const wholeWorks = ({ from, to }: Mark): Said => ({
  is: 'behaves',
  topic: null,
  says: 'works',
  whole: true,
  from,
  to,
  rule: 'everything works',
});

/** Of a thing that is named before it only that thing is untested, which no claim can say. */
function untested(i: number, marks: readonly Mark[], used: Set<Mark>): 'untested' | 'part-untested' | 'denied' {
  if (negations(marks, i, used) % 2 === 1) return 'denied';
  return onlyUnit(marks.slice(0, i).filter(isTopic)) ? 'untested' : 'part-untested';
}

const taught = ({ claim, words, from, to }: Extract<Mark, { is: 'taught' }>, negated: boolean): Said => {
  if (!negated) return { is: 'taught', claim, from, to, rule: `taught: ${words}` };
  if (claim.about !== 'function') return { is: 'denied', from, to, rule: `taught: ${words}` };
  return { is: 'taught', claim: { ...claim, says: OPPOSITE[claim.says] }, from, to, rule: `taught: ${words}, not` };
};

const isState = (mark: Mark): boolean => isRule(mark, 'behaves', 'finds', 'lacks', 'untested', 'past') || mark.is === 'taught';

/** Negations that reach the mark at `i`: those since the state before it. They are used up, but for "neither". */
function negations(marks: readonly Mark[], i: number, used: Set<Mark>): number {
  let count = 0;
  for (let at = i - 1; at >= 0; at--) {
    const mark = marks[at]!;
    if (isState(mark)) break;
    if (!isRule(mark, 'not') || marks[i]!.from - mark.to > REACH) continue;
    count++;
    used.add(mark);
  }
  return count;
}

/** The topics that a state belongs to. */
function topicsFor(i: number, marks: readonly Mark[], before: readonly Topic[], topicNamed: TopicNamed): readonly (TopicMark | Topic)[] {
  const earlier: TopicMark[] = [];
  for (let at = i - 1; at >= 0 && !isState(marks[at]!); at--) if (isTopic(marks[at]!)) earlier.unshift(marks[at] as TopicMark);
  if (!onlyUnit(earlier)) return closest(earlier);
  const later: TopicMark[] = [];
  for (let at = i + 1; at < marks.length && !isState(marks[at]!) && !isRule(marks[at]!, 'not', 'except'); at++)
    if (isTopic(marks[at]!)) later.push(marks[at] as TopicMark);
  if (!onlyUnit(later)) return closest(later);
  if (earlier.length + later.length > 0) return [];
  const state = marks.slice(0, i).findLastIndex(isState);
  return state < 0 ? before : ofState(state, marks, before, topicNamed);
}

/** What the state at `i` is said of: its own topic, or the one that it belongs to. */
function ofState(i: number, marks: readonly Mark[], before: readonly Topic[], topicNamed: TopicNamed): readonly (TopicMark | Topic)[] {
  const mark = marks[i]!;
  if (mark.is === 'rule' && mark.rule.does === 'behaves' && mark.rule.topic !== null) return [topicNamed(mark.rule.topic)];
  return topicsFor(i, marks, before, topicNamed);
}

/** No thing is named, at most a pronoun or the whole unit. */
const onlyUnit = (found: readonly (TopicMark | Topic)[]): boolean => found.every((each) => topicOf(each).id === 'unit');

/** A pronoun beside a thing only stands for it. */
function closest(found: readonly TopicMark[]): readonly TopicMark[] {
  const things = found.filter(({ topic }) => topic.id !== 'unit');
  return things.length > 0 ? things : found;
}

const topicOf = (each: TopicMark | Topic): Topic => ('topic' in each ? each.topic : each);

function spanWith(mark: Mark, topics: readonly (TopicMark | Topic)[]): { from: number; to: number } {
  const places = topics.flatMap((each) => ('topic' in each ? [each.from, each.to] : []));
  return { from: Math.min(mark.from, ...places), to: Math.max(mark.to, ...places) };
}

function behaviour(
  mark: Mark,
  i: number,
  marks: readonly Mark[],
  used: Set<Mark>,
  before: readonly Topic[],
  topicNamed: TopicNamed,
  whole: Mark | undefined,
): Said[] {
  const rule = (mark as RuleMark).rule;
  if (rule.does !== 'behaves' && !(rule.does === 'past' && !marks.some((each) => isRule(each, 'behaves')))) return [];
  const says: Outcome = rule.does === 'behaves' ? rule.says : 'works';
  const negated = negations(marks, i, used) % 2 === 1;
  const outcome = negated ? OPPOSITE[says] : says;
  const name = negated ? `${rule.name}, not` : rule.name;
  if (rule.does === 'behaves' && rule.topic !== null) {
    const named = topicNamed(rule.topic);
    return [{ is: 'behaves', topic: named, says: outcome, whole: false, ...spanWith(mark, []), rule: name }];
  }
  if (whole && outcome === 'works') return [{ ...wholeWorks(whole), ...spanWith(mark, []), from: Math.min(mark.from, whole.from) }];
  const topics = topicsFor(i, marks, before, topicNamed);
  const otherwise = rule.does === 'behaves' ? rule.otherwise : 'unit';
  const list = onlyUnit(topics) ? [topicNamed(otherwise)] : topics;
  return list.map((each) => ({ is: 'behaves', topic: topicOf(each), says: outcome, whole: false, ...spanWith(mark, [each]), rule: name }));
}

function finding(
  mark: RuleMark,
  i: number,
  marks: readonly Mark[],
  used: Set<Mark>,
  before: readonly Topic[],
  topicNamed: TopicNamed,
): Said[] {
  const { rule } = mark;
  if (rule.does !== 'finds') return [];
  if (negations(marks, i, used) % 2 === 1) return [{ is: 'denied', from: mark.from, to: mark.to, rule: rule.name }];
  const found = topicsFor(i, marks, before, topicNamed).filter((each) => topicOf(each).places.length > 0);
  const list = found.length > 0 ? found : rule.topic === null ? [] : [topicNamed(rule.topic)];
  return list.map((each) => ({ is: 'finds', topic: topicOf(each), sees: rule.sees, ...spanWith(mark, [each]), rule: rule.name }));
}

/** "lacks its …", "… missing", "… not included", "comes without …". */
function lacking(
  mark: RuleMark,
  i: number,
  marks: readonly Mark[],
  used: Set<Mark>,
  before: readonly Topic[],
  topicNamed: TopicNamed,
): Said[] {
  const negated = negations(marks, i, used) % 2 === 1;
  const lacks = mark.rule.does === 'lacks' ? !negated : negated || (marks[i + 1]?.from === mark.to && isRule(marks[i + 1]!, 'not'));
  if (!lacks) return mark.rule.does === 'lacks' ? [{ is: 'denied', from: mark.from, to: mark.to, rule: 'lacks, not' }] : [];
  const next = marks[i + 1];
  const at = next && isRule(next, 'not') ? i + 1 : i;
  used.add(marks[at]!);
  const found = topicsFor(at, marks, before, topicNamed);
  return found.map((each): Said => absent(topicOf(each), spanWith(mark, [each]), mark.rule.name));
}

const absent = (topic: Topic, span: { from: number; to: number }, rule: string): Said =>
  topic.places.length > 0 && (rule !== 'gone' || topic.no === 'missing')
    ? { is: 'finds', topic, sees: 'missing', ...span, rule }
    : { is: 'behaves', topic, says: 'fails', whole: false, ...span, rule };

/** "everything works except the light": what follows does not. */
function exceptions(marks: readonly Mark[]): Said[] {
  const at = marks.findIndex((mark) => isRule(mark, 'except'));
  if (at < 0) return [];
  return closest(marks.slice(at + 1).filter(isTopic)).map((each): Said => ({
    is: 'behaves',
    topic: each.topic,
    says: 'fails',
    whole: false,
    ...spanWith(marks[at]!, [each]),
    rule: 'everything except',
  }));
}

/** "no sound", "no charger": a negation that no state used, before its topics. */
function bareNo(marks: readonly Mark[], used: ReadonlySet<Mark>): Said[] {
  return marks.flatMap((mark, i): Said[] => {
    if (!isRule(mark, 'not') || used.has(mark)) return [];
    const topics: TopicMark[] = [];
    for (let at = i + 1; at < marks.length && isTopic(marks[at]!); at++) topics.push(marks[at] as TopicMark);
    return closest(topics).map((each): Said => {
      const span = spanWith(mark, [each]);
      if (each.topic.no === 'missing') return absent(each.topic, span, 'no …');
      return { is: 'behaves', topic: each.topic, says: 'fails', whole: false, ...span, rule: 'no …' };
    });
  });
}
