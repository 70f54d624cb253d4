import type { PlanItem, PlanView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

type Plan = NonNullable<PlanView['plan']>;

/** The plan of the whole pile; with `why`, the reasons of each thing. */
export function planLines(view: PlanView, why: boolean): string[] {
  const { plan } = view;
  const broken = view.broken.map((law) => `A plan broke a law and is not shown: ${law}.`);
  if (!plan) return [view.note, ...broken];
  const money = (minor: number): string => moneyText(minor, view.currency);
  return [
    ...table(
      ['no', 'name', 'does', 'works', 'second best, less', 'what'],
      plan.items.map((item) => itemRow(item, money)),
      [0, 3],
    ),
    ...(why
      ? plan.items.flatMap((item) => [
          '',
          `#${item.number} ${item.name}: ${item.headline}`,
          ...item.treatments.map(treatmentLine),
          ...item.why.map((line) => `  ${line}`),
        ])
      : []),
    '',
    ...basketLines(plan, money),
    ...worthLines(plan, money),
    ...(plan.keeps_choices ? [] : ['Your choices together would break a limit, so this is the plan without them.']),
    ...broken,
    ...view.changes,
    ...view.assumed,
    ...(why ? [] : ['salvor plan --why says why; salvor next ITEM says what to do next.']),
  ];
}

const DOES = { open: 'work on it', 'as-is': 'sell as it is', keep: 'leave alone', loose: 'in the drawer' } as const;

const treatmentLine = ({ slot_name: slot, name, minutes, works_now: now, works_after: after }: PlanItem['treatments'][number]): string =>
  `  ${slot}: ${name}; ${minutes} min, works with ${percent(now)} before and ${percent(after)} after`;

const itemRow = (item: PlanItem, money: (minor: number) => string): string[] => [
  `${item.number}`,
  item.name,
  DOES[item.does],
  item.does === 'open' ? percent(item.finished_chance) : '',
  item.second ? `${money(item.second.less_minor)} ${item.second.name}` : '',
  item.headline,
];

const basketLines = ({ baskets, fits }: Plan, money: (minor: number) => string): string[] => [
  ...baskets.flatMap(({ supplier, days, cost_minor: cost, postage_minor: postage, lines }) => [
    `Order from ${supplier}, ${money(cost)} with ${money(postage)} postage, ${days} days:`,
    ...lines.map((line) => `  ${line.count} × ${line.name}  ${money(line.cost_minor)}`),
  ]),
  ...fits.map(({ count, name, slot_name: slot }) => `Fit ${count} × ${name} as ${slot.toLowerCase()} where one is missing.`),
];

function worthLines(plan: Plan, money: (minor: number) => string): string[] {
  const { profit } = plan;
  const bound = plan.bound_minor === null ? '' : `; no plan can earn more than about ${money(plan.bound_minor)}`;
  return [
    `Expected ${money(profit.mean_minor)}, nine times in ten from ${money(profit.low_minor)} to ${money(profit.high_minor)}; the worst tenth averages ${money(profit.worst_tenth_minor)}${bound}.`,
    `${plan.built} units finished in ${plan.minutes} min, ${money(plan.spend_minor)} spent. Weeks: ${plan.weeks.map(({ minutes }) => `${minutes} min`).join(', ') || 'none'}.`,
    `Each unit on its own where that pays would earn ${money(plan.alone_minor)}, selling all as it is ${money(plan.scrap_minor)}.`,
    `An hour more would add ${money(plan.hour_minor)}, ${money(plan.more_money.by_minor)} more for parts ${money(plan.more_money.adds_minor)}.`,
    ...plan.donors
      .slice(0, 5)
      .map((donor) => `One more working ${donor.slot_name.toLowerCase()} of ${donor.model_name} would add ${money(donor.worth_minor)}.`),
  ];
}
