import type { PlanChange, PlanChanges, PilePlan } from '../../core/planning/index.ts';
import { lower, money, whole } from '../advice/say.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { PlanView } from '../views/index.ts';
import { MORE_MONEY_MINOR } from './jobs.ts';
import type { Made, PlanStanding } from './planner.ts';
import { planItemView } from './plan-item-view.ts';
import { partName, planNames, type PlanNames } from './plan-names.ts';
import { planWishes, type PlanWishes } from './plan-wishes.ts';

type Shown = NonNullable<PlanView['plan']>;

const NOTES: Readonly<Record<PlanView['stage'], string>> = {
  nothing: 'Nothing waits for a plan: no unit is under work, and no assembly lies in the drawer.',
  making: 'The plan of the whole pile is being made. Until it stands, go by the advice on each unit alone.',
  ready: 'The plan of the whole pile: units, drawer and orders decided together.',
  failed: 'The whole pile could not be planned as it is now. Go by the advice on each unit alone.',
  off: 'This bench makes no plan of the whole pile. Go by the advice on each unit alone.',
};

/** How the plan stands, in words and rounded numbers. Without a standing this bench makes none. */
export function planView(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>, standing: PlanStanding | null): PlanView {
  const stage = standing?.stage ?? 'off';
  const made = standing?.made ?? null;
  const wishes = planWishes(state);
  const names = made && planNames(state, models, made);
  return {
    currency: state.settings.currency,
    stage,
    note:
      stage === 'making' && made?.plan ? 'Something has changed and the plan is being made anew; this is the one before.' : NOTES[stage],
    plan: made?.plan && names ? planShown(state, made, made.plan, names) : null,
    changes: standing?.changes && names ? changeLines(standing.changes, names, state.settings.currency) : [],
    broken: [...(made?.broken ?? [])],
    wishes: wishesShown(wishes),
    suppliers: [...state.planning.suppliers.values()].map(({ name, postageMinor, days, offers }) => ({
      name,
      postage_minor: postageMinor,
      days,
      offers: offers.map(({ part, unitMinor, least }) => ({
        part,
        name: partName(state, [...models.values()], part),
        unit_minor: unitMinor,
        least,
      })),
    })),
    parts: partsKnown(state, models),
    assumed: [...wishes.assumed, ...ASSUMED],
  };
}

const ASSUMED = [
  'What is wrong with one assembly of a unit is taken as independent of the others.',
  'Parts that no supplier on file sells are taken at the price of the model, without postage.',
];

const wishesShown = (wishes: PlanWishes): PlanView['wishes'] => ({
  hours_a_week: wishes.hoursAWeek,
  weeks: wishes.weeks,
  money_minor: wishes.moneyMinor,
  risk_share: wishes.riskShare,
  day_minor: wishes.dayMinor,
  within_days: wishes.withinDays,
  lot_per_hour_minor: wishes.lotPerHourMinor,
  lot_loss_chance: wishes.lotLossChance,
  bidders: wishes.bidders,
  error_share: wishes.errorShare,
});

function partsKnown(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): PlanView['parts'] {
  const parts = new Map([...state.bags.values()].map(({ part, name }) => [part, name]));
  for (const { file } of models.values()) for (const { id, name } of file.parts) parts.set(id, name);
  return [...parts].map(([id, name]) => ({ id, name })).sort((a, b) => (a.name < b.name ? -1 : 1));
}

const WAYS: Readonly<Record<PilePlan['items'][number]['does'], number>> = { open: 0, loose: 1, 'as-is': 2, keep: 3 };

function planShown(state: Readonly<BenchState>, made: Made, plan: PilePlan, names: PlanNames): Shown {
  const { currency } = state.settings;
  const items = plan.items
    .filter(({ item }) => state.items.has(item))
    .toSorted((a, b) => WAYS[a.does] - WAYS[b.does] || (b.second?.lessMinor ?? 0) - (a.second?.lessMinor ?? 0))
    .map((item) => planItemView({ made, plan, names, currency }, state, item));
  const { meanMinor } = plan.profit;
  return {
    seq: made.seq,
    items,
    fits: plan.fits.map(({ part, model, slot, count }) => ({
      part,
      name: names.part(part),
      model_id: model,
      slot_name: names.slot(model, slot),
      count,
    })),
    baskets: plan.baskets.map((basket) => basketShown(basket, names)),
    weeks: plan.weeks.map(({ week, minutes }) => ({ week, minutes: Math.round(minutes) })),
    minutes: Math.round(plan.spent.minutesExpected),
    spend_minor: whole(plan.spent.moneyMinor),
    built: Math.round(plan.spent.built * 10) / 10,
    profit: profitShown(plan.profit),
    alone_minor: whole(plan.against.aloneMinor),
    scrap_minor: whole(plan.against.scrapMinor),
    bound_minor: plan.boundMinor !== null && plan.boundMinor >= meanMinor ? whole(plan.boundMinor) : null,
    donors: made.donors.map(({ model, slot, worthMinor }) => ({
      model_id: model,
      model_name: names.model(model),
      slot_name: names.slot(model, slot),
      worth_minor: whole(worthMinor),
    })),
    hour_minor: whole(made.hourMinor),
    more_money: { by_minor: MORE_MONEY_MINOR, adds_minor: whole(made.moneyMinor) },
    keeps_choices: made.keepsChoices,
    regret_minor: whole(made.regretMinor),
  };
}

const basketShown = ({ supplier, days, postageMinor, lines, costMinor }: PilePlan['baskets'][number], names: PlanNames) => ({
  supplier,
  days,
  postage_minor: whole(postageMinor),
  lines: lines.map((line) => ({ part: line.part, name: names.part(line.part), count: line.count, cost_minor: whole(line.costMinor) })),
  cost_minor: whole(costMinor),
});

function profitShown({ meanMinor, meanErrorMinor, worstTenthMinor, quantilesMinor, bars }: PilePlan['profit']): Shown['profit'] {
  return {
    mean_minor: whole(meanMinor),
    mean_error_minor: whole(meanErrorMinor),
    worst_tenth_minor: whole(worstTenthMinor),
    low_minor: whole(quantilesMinor[0]),
    high_minor: whole(quantilesMinor[4]),
    bars: { from_minor: whole(bars.fromMinor), to_minor: whole(bars.toMinor), shares: bars.shares.map((share) => Math.min(1, share)) },
  };
}

const BECAUSE: Readonly<Record<PlanChange['why'], string>> = {
  new: 'it is new in the pile',
  gone: 'it is not in the pile any more',
  itself: 'something was noted of it',
  others: 'something else in the pile made this better',
};
const DOES = { open: 'work on it', 'as-is': 'sell it as it is', keep: 'leave it alone', loose: 'have it ready' } as const;

/** What changed and why, a line each. */
function changeLines({ items, orders, profitMinor }: PlanChanges, names: PlanNames, currency: string): string[] {
  const said = ({ does, remedies }: NonNullable<PlanChange['after']>, item: string): string => {
    const treated = Object.values(remedies).map((remedy) => lower(names.treatment(item, remedy)));
    return treated.length > 0 ? treated.join('; ') : DOES[does];
  };
  const lines = items.map(({ item, before, after, why }) => {
    const from = before ? ` instead of: ${said(before, item)}` : '';
    return `${names.item(item)}: ${after ? `now ${said(after, item)}${from}` : 'left the plan'}, because ${BECAUSE[why]}.`;
  });
  const bought = orders.map(({ part, more }) => `${Math.abs(more)} ${more > 0 ? 'more' : 'fewer'} of ${lower(names.part(part))} to order.`);
  const gain = `Expected profit ${profitMinor >= 0 ? 'rose' : 'fell'} by ${money(Math.abs(profitMinor), currency)}.`;
  return [...lines, ...bought, gain];
}
