import type { CalibrationView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

type View = CalibrationView;

const TITLES: Readonly<Record<View['forecasts'][number]['about'], string>> = {
  end: 'That a unit ends as a working one',
  remedy: 'That it works after a remedy',
  trial: 'That a function works when tried',
};

/** Said against came by band, estimates beside outcomes, and what the best and worst decisions teach. */
export function calibrationLines(view: View): string[] {
  if (view.forecasts.length === 0 && view.price.length === 0)
    return ['Nothing can be judged yet: it begins with the first trial, remedy or sale.'];
  return [
    ...view.forecasts.flatMap((forecast) => [...forecastLines(forecast), '']),
    ...estimateLines('price', view.price, (minor) => moneyText(minor, view.currency)),
    ...estimateLines('minutes', view.minutes, (minutes) => `${Math.round(minutes)}`),
    ...estimateLines('parts', view.parts, (minor) => moneyText(minor, view.currency)),
    ...decisionLines('Better than thought', view.best, view.currency),
    ...decisionLines('Worse than thought', view.worst, view.currency),
  ];
}

function forecastLines({ about, count, score, calibration, resolution, uncertainty, bands }: View['forecasts'][number]): string[] {
  const parts = `calibration ${digits(calibration)}, resolution ${digits(resolution)}, uncertainty ${digits(uncertainty)}`;
  return [
    `${TITLES[about]}: ${count} times; score ${digits(score)} (${parts})`,
    ...table(
      ['between', 'said', 'came', 'nine in ten', 'times'],
      bands.map((band) => [
        `${Math.round(100 * band.low)} and ${Math.round(100 * band.high)} %`,
        percent(band.said),
        percent(band.came),
        `${percent(band.came_low)} to ${percent(band.came_high)}`,
        `${band.count}`,
      ]),
      [1, 2, 4],
    ),
  ];
}

const digits = (value: number): string => value.toFixed(3);

function estimateLines(name: string, lines: View['price'], say: (value: number) => string): string[] {
  if (lines.length === 0) return [];
  const rows = lines.map(({ number, name: unit, expected, came }) => [`${number}`, unit, say(expected), say(came)]);
  return [...table(['no', name, 'expected', 'came'], rows, [0, 2, 3]), ''];
}

function decisionLines(title: string, decisions: View['best'], currency: string): string[] {
  if (decisions.length === 0) return [];
  return [
    `${title}:`,
    ...decisions.map(
      ({ number, name, expected_minor, came_minor, lesson }) =>
        `  #${number} ${name}: ${moneyText(expected_minor, currency)} thought, ${moneyText(came_minor, currency)} came. ${lesson}`,
    ),
  ];
}
