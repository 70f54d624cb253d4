import { describe, expect, it } from 'vitest';
import { ScoutQuestion, SellerQuestions } from '../views/index.ts';
import { createAdvisor } from './advisor.ts';
import { benchOf, claims } from './testing/bench-of.ts';
import { pocketModels } from './testing/pocket-model.ts';

function ask(price_minor: number, said: readonly object[] = []): SellerQuestions {
  const question = ScoutQuestion.parse({ model_id: 'pocket-1', seller: 'Marsh Lane', price_minor, claims: said });
  const view = createAdvisor(pocketModels()).sellerQuestions(benchOf([]), question);
  if ('ok' in view) throw new Error(view.message);
  return SellerQuestions.parse(view);
}

describe('what to ask the seller', () => {
  it('is worth most where the answer decides: near the worth of the lot, and nothing at a price that is good or bad anyway', () => {
    const [first] = ask(1).questions;
    const worth = (first!.if_works_minor + first!.if_fails_minor) / 2;
    const near = ask(Math.round(worth)).questions;
    expect(near[0]!.worth_minor).toBeGreaterThan(0);
    for (const price of [1, 50_000]) expect(ask(price).questions.every(({ worth_minor: value }) => value === 0)).toBe(true);
    expect(ask(1).why[0]).toMatch(/^No single answer would change/);
  });

  it('comes with most worth first, and with what each answer would mean', () => {
    const { questions } = ask(2500);
    const worths = questions.map(({ worth_minor: value }) => value);
    expect(worths).toEqual([...worths].sort((a, b) => b - a));
    expect(questions.find((each) => each.function === 'power')).toMatchObject({ ask: 'Does it switch on and stay on?' });
    const answers = questions.map((each) => [each.if_works_minor, each.if_fails_minor].sort((a, b) => a - b));
    questions.forEach(({ worth_minor: value }, i) => expect(value > 0).toBe(answers[i]![0]! < 2500 && answers[i]![1]! > 2500));
  });

  it('leaves out what is said already', () => {
    const said = [claims('power', 'works'), claims('picture', 'fails')];
    expect(ask(2500, said).questions.map((each) => each.function)).toEqual(['sound']);
  });
});
