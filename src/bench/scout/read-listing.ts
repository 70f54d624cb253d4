import type { Claim } from '../events/index.ts';
import { clausesOf } from './clauses.ts';
import type { ListingReading, ReadableModel, ReadClaim, Remark, TaughtWords } from './listing-reading.ts';
import { dictionary, marksIn, type Mark } from './marks.ts';
import { readClause, type Said } from './read-clause.ts';
import { settle } from './settle.ts';
import { tokensOf, type Token } from './tokens.ts';
import { TOPICS, type Topic } from './topics.ts';

const topicNamed = (id: string): Topic => TOPICS.find((topic) => topic.id === id)!;

/**
 * The claims in the text of a listing, each with the words that it was read from and the rule that read it, in the words of a model. What a text does not say is not guessed. Words
 * that the person taught come before the built-in ones.
 */
export function readListing(text: string, model: ReadableModel, taught: readonly TaughtWords[] = []): ListingReading {
  const tokens = tokensOf(text);
  const { clauses, units } = clausesOf(text, tokens);
  const entries = dictionary(model, taught);
  const found: Omit<ReadClaim, 'contradicted' | 'counts'>[] = [];
  const remarks: Remark[] = [];
  let before: { readonly sentence: number; readonly topics: readonly Topic[] } = { sentence: -1, topics: [] };
  for (const clause of clauses) {
    if (clause.asked) continue;
    const marks = cutAtWhether(marksIn(tokens, clause.start, clause.end, entries), tokens);
    const inherited = before.sentence === clause.sentence ? before.topics : [];
    const { said, hedged, topics } = readClause(marks, tokens, inherited, topicNamed);
    for (const each of said) {
      const span = { from: tokens[each.from]!.from, to: tokens[each.to - 1]!.to };
      const words = text.slice(span.from, span.to);
      const claims = claimsOf(each, model);
      if (typeof claims === 'string') remarks.push({ code: claims, span, words });
      else found.push(...claims.map((claim) => ({ claim, unit: clause.unit, span, words, rule: each.rule, hedged })));
    }
    before = { sentence: clause.sentence, topics: topics.length > 0 ? topics : inherited };
  }
  return { ...settle(found, remarks), units };
}

/** "no idea if it works": nothing behind it is claimed; and of one thing only ("cannot say whether the light works") not even that all is untested. */
function cutAtWhether(marks: readonly Mark[], tokens: readonly Token[]): Mark[] {
  const at = marks.findIndex(
    (mark) => mark.is === 'rule' && mark.rule.does === 'untested' && /^(if|whether)$/.test(tokens[mark.to - 1]!.word),
  );
  if (at < 0) return [...marks];
  const ofOneThing = marks.slice(at).some((mark) => mark.is === 'topic' && mark.topic.id !== 'unit');
  return marks.slice(0, ofOneThing ? at : at + 1);
}

/** What was said, as claims of the model; or as a remark. */
function claimsOf(said: Said, model: ReadableModel): Claim[] | Remark['code'] {
  if (said.is === 'denied' || said.is === 'condition' || said.is === 'as-is' || said.is === 'part-untested') return said.is;
  if (said.is === 'untested') return [{ about: said.is }];
  if (said.is === 'taught') return isOf(model, said.claim) ? [said.claim] : 'not-in-model';
  if (said.is === 'finds') {
    const place = said.topic?.places.find((id) => model.blocks.some((block) => block.id === id));
    return place === undefined ? 'not-in-model' : [{ about: 'place', place, sees: said.sees }];
  }
  if (said.whole) return model.functions.map(({ id }) => ({ about: 'function', function: id, says: said.says }));
  const id = [...(said.topic?.functions ?? []), said.topic?.id].find((each) => model.functions.some((known) => known.id === each));
  return id === undefined ? 'not-in-model' : [{ about: 'function', function: id, says: said.says }];
}

const isOf = ({ functions, blocks }: ReadableModel, claim: Claim): boolean => {
  if (claim.about === 'function') return functions.some(({ id }) => id === claim.function);
  return claim.about === 'untested' || blocks.some(({ id }) => id === claim.place);
};
