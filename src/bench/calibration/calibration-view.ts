import { brierSplit, calibrationBands, learnedChance, type Forecast } from '../../core/numeric/index.ts';
import { roundHalfEven } from '../../core/quantity/index.ts';
import type { BenchState } from '../state.ts';
import type { CalibrationView } from '../views/index.ts';
import { decisionsOf, endsOf, type End } from './ends.ts';
import type { Judged } from './judge.ts';

type View = CalibrationView;
type About = View['forecasts'][number]['about'];

const MOST_DECISIONS = 5;

/** Forecasts by band, estimates beside outcomes, and the decisions that turned out best and worst. */
export function calibrationView(state: Readonly<BenchState>, wanted: ReadonlySet<string>, known: ReadonlyMap<string, Judged | null>): View {
  const judged = [...wanted].flatMap((id) => known.get(id) ?? []);
  const ends = endsOf(state, judged);
  const decisions = decisionsOf(state, ends);
  const said = (about: 'trial' | 'remedy'): Forecast[] =>
    judged.flatMap((each) => ('chance' in each && each.about === about ? [each] : []));
  return {
    currency: state.settings.currency,
    judged: [...wanted].filter((id) => known.has(id)).length,
    to_judge: wanted.size,
    forecasts: [
      ...forecastOf(
        'end',
        ends.map(({ expected, worked }) => ({ chance: expected.chance, came: worked })),
      ),
      ...forecastOf('remedy', said('remedy')),
      ...forecastOf('trial', said('trial')),
    ],
    price: judged.flatMap((each) => (each.about === 'price' ? priceLine(state, each) : [])),
    minutes: ends.map((end) => lineOf(end, end.expected.minutes, end.minutes)),
    parts: ends.map((end) => lineOf(end, roundHalfEven(end.expected.spendMinor), end.partsMinor)),
    best: decisions.filter(({ came_minor, expected_minor }) => came_minor >= expected_minor).slice(0, MOST_DECISIONS),
    worst: decisions
      .filter(({ came_minor, expected_minor }) => came_minor < expected_minor)
      .toReversed()
      .slice(0, MOST_DECISIONS),
    why: WHY,
  };
}

const WHY = [
  'What was thought is reckoned anew: before each event that settles something the bench is asked as it stood then, with what it had learned by then, by the numbers of the model files.',
  'The score is the mean square of chance less outcome (Brier 1950), split into calibration, resolution and uncertainty (Murphy 1973).',
  'Limits of a share are those of nine in ten for as few outcomes as there are: a band whose limits hold what was said is well calibrated as far as can be told.',
];

function forecastOf(about: About, forecasts: readonly Forecast[]): View['forecasts'] {
  if (forecasts.length === 0) return [];
  const { score, calibration, resolution, uncertainty, withinBands } = brierSplit(forecasts);
  const bands = calibrationBands(forecasts).filter(({ count }) => count > 0);
  return [
    {
      about,
      count: forecasts.length,
      score,
      calibration,
      resolution,
      uncertainty,
      within_bands: withinBands,
      bands: bands.map(({ low, high, count, said, came }) => {
        const limits = learnedChance(0.5, 1, came * count, (1 - came) * count);
        return { low, high, count, said, came, came_low: limits.low, came_high: limits.high };
      }),
    },
  ];
}

type Line = View['price'][number];

const lineOf = ({ item, at }: End, expected: number, came: number): Line => ({
  item_id: item.id,
  number: item.number,
  name: item.name,
  at,
  expected,
  low: null,
  high: null,
  came,
});

function priceLine(state: Readonly<BenchState>, { itemId, at, expected, cameMinor }: Extract<Judged, { about: 'price' }>): Line[] {
  const item = state.items.get(itemId);
  if (!item) return [];
  const { number, name } = item;
  const [low, high] = [roundHalfEven(expected.lowMinor), roundHalfEven(expected.highMinor)];
  return [{ item_id: itemId, number, name, at, expected: roundHalfEven(expected.middleMinor), low, high, came: cameMinor }];
}
