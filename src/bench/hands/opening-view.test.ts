import { describe, expect, it } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { OpeningView } from '../views/index.ts';
import { goalList, goalOf, goalText, openingView, orderSentence, signsAt, stepEvents } from './index.ts';

const models = smallModels();
const model = models.get('lamp-1')!;
const view = (goal: string | null, ...steps: readonly Step[]) => {
  const state = foldLog(testLog(...oneLamp, ...steps), models);
  return OpeningView.parse(openingView(state, model, state.items.get('lamp-a')!, goal));
};
const ticked = (step: string, count: number | null, foreign = 0, way: 'in' | 'back' = 'in', minutes = 0): Step[] =>
  stepEvents(model.file, { itemId: 'lamp-a', step, way, minutes, counted: count === null ? null : { count, foreign } }).map(
    ({ kind, body }): Step => [kind, body],
  );
const ids = (steps: readonly { readonly id: string }[]): string[] => steps.map(({ id }) => id);

describe('the way into an item', () => {
  it('leads to the first goal when none is named, with the way back and a proved order', () => {
    const { goal, steps, back, exact, reached } = view(null);
    expect({ goal, steps: ids(steps), back: ids(back), exact, reached }).toEqual({
      goal: 'stage:open',
      steps: ['open-lamp'],
      back: ['open-lamp'],
      exact: true,
      reached: 'way',
    });
  });

  it('goes on from what is ticked, and closes what is open', () => {
    expect(ids(view('stage:board-out', ...ticked('open-lamp', null)).steps)).toEqual(['board']);
    const closing = view('stage:closed', ...ticked('open-lamp', null), ...ticked('board', null));
    expect({ steps: closing.steps, back: ids(closing.back) }).toEqual({ steps: [], back: ['board', 'open-lamp'] });
  });

  it('shows what was learned beside what the model says', () => {
    const closed = view('stage:open', ...ticked('open-lamp', null, 0, 'in', 8), ...ticked('open-lamp', null, 0, 'back'));
    expect(closed.steps[0]).toMatchObject({ model_minutes: 2, times: 1 });
    expect(closed.steps[0]!.minutes).toBeGreaterThan(2);
  });

  it.each([
    ['moon', 'unknown-goal'],
    ['stage:moon', 'unknown-goal'],
    ['slot:none', 'unknown-goal'],
    ['block:bulb', 'no-step-leads-there'],
  ])('says of %s: %s', (goal, reached) => {
    expect(view(goal)).toMatchObject({ reached, steps: [] });
  });
});

describe('fasteners of a ticked step', () => {
  it('that are missing or foreign are findings at the set, and on the shopping list', () => {
    const { fasteners } = view('stage:open', ...ticked('open-lamp', 1, 1));
    expect(fasteners).toMatchObject({ even: false, whole: false, shopping: [{ text: 'Screws: Cross 00, 5 mm', count: 2 }] });
    const findings = ticked('open-lamp', 1, 1).filter(([kind]) => kind === 'finding-noted');
    expect(findings.map(([, body]) => body)).toEqual([
      { item_id: 'lamp-a', place: 'screws', sees: 'missing', text: '1 missing of: Screws' },
      { item_id: 'lamp-a', place: 'screws', sees: 'opened-before', text: '1 of another kind among: Screws' },
    ]);
  });

  it('that all came out and went in again are whole, and make no finding', () => {
    const { fasteners } = view('stage:closed', ...ticked('open-lamp', 2), ...ticked('open-lamp', 2, 0, 'back'));
    expect(fasteners).toMatchObject({ even: true, whole: true, findings: [], shopping: [] });
    expect(ticked('open-lamp', 2)).toHaveLength(2);
  });
});

describe('goals', () => {
  it('are read as they are written', () => {
    for (const { goal } of goalList(model)) expect(goalText(goalOf(goal)!)).toBe(goal);
    expect(goalList(model).map(({ goal }) => goal)).toEqual(
      expect.arrayContaining(['stage:board-out', 'stage:closed', 'remedy:clean-switch']),
    );
  });
});

describe('signs at a step', () => {
  it('are what its model names, and what shows wherever screws come out', () => {
    const spec = {
      ...model.file.steps[0]!,
      look_for: [
        { at: 'switch', sees: ['residue' as const, 'loose' as const, 'opened-before' as const] },
        { at: 'bulb', sees: ['opened-before' as const] },
      ],
    };
    expect(signsAt(model.file, spec).map(({ at, name, sees }) => `${at}: ${name || sees}`)).toEqual([
      'switch: Liquid indicator has turned',
      'switch: Dried-up residue',
      'switch: loose',
      'switch: Torn seal, scratched screws or pry marks',
      'switch: Solder by another hand',
      'bulb: Torn seal, scratched screws or pry marks',
      'screws: Torn seal, scratched screws or pry marks',
      'screws: Cracked screw boss',
    ]);
  });
});

describe('how good the order is', () => {
  it('is said with its bound where it is not proved', () => {
    const proved = view('stage:open');
    expect(orderSentence(proved)).toMatch(/^No other order/);
    expect(orderSentence({ ...proved, exact: false, cost_minutes: 31.26, bound_minutes: 28 })).toContain('less than 28 of its 31.3');
  });
});
