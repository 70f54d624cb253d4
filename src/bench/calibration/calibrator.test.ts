import { describe, expect, it } from 'vitest';
import { bought, did, tried } from '../advice/testing/bench-of.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { foldLog } from '../fold/index.ts';
import { testId, testLog, type Step } from '../testing/events.ts';
import { Calibrator } from './calibrator.ts';

const models = pocketModels();
const never = () => false;
const viewOf = (steps: readonly Step[], calibrator = new Calibrator(models), stop = never) => {
  const log = testLog(...steps);
  return calibrator.view(foldLog(log, models), log, stop);
};
const sold = (item_id: string, price_minor: number, as = 'working'): Step => ['sold', { item_id, as, price_minor, currency: 'GBP' }];
const mended = (unit: string, minutes = 5): Step[] => [
  tried(unit, 'picture', 'fails'),
  ['remedy-done', { item_id: unit, remedy: 'clean-contacts', minutes, outcome: 'mended' }],
  tried(unit, 'picture', 'works'),
];
const forecast = (view: ReturnType<typeof viewOf>, about: string) => view.forecasts.find((each) => each.about === about);

describe('what was thought against what came', () => {
  it('holds the chance before each trial, remedy and end against what it settled', () => {
    const view = viewOf([
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      ...mended('u1'),
      sold('u1', 6000),
      ['scrapped', { item_id: 'u2', reason: 'beyond' }],
    ]);
    expect(forecast(view, 'trial')!.count).toBe(2);
    expect(forecast(view, 'remedy')!.count).toBe(1);
    const end = forecast(view, 'end')!;
    expect(end.count).toBe(2);
    expect(end.bands.reduce((sum, { count, came }) => sum + count * came, 0)).toBeCloseTo(1, 9);
    expect(end.score).toBeCloseTo(end.calibration - end.resolution + end.uncertainty + end.within_bands, 9);
  });

  it('knows of later evidence nothing: the chance of a remedy is that from before it', () => {
    const first = forecast(viewOf([...bought('lot', 'marsh-lane', ['u1']), ...mended('u1')]), 'remedy')!;
    const later = forecast(
      viewOf([
        ...bought('lot', 'marsh-lane', ['u1']),
        ...mended('u1'),
        tried('u1', 'sound', 'fails'),
        did('u1', 'new-speaker', 'not-tried-yet'),
      ]),
      'remedy',
    )!;
    expect(later.bands).toEqual(first.bands);
    expect(first.bands[0]!.said).toBeGreaterThan(0.05);
    expect(first.bands[0]!.said).toBeLessThan(0.95);
  });

  it('sets price, minutes and parts beside what was expected', () => {
    const view = viewOf([...bought('lot', 'marsh-lane', ['u1']), ...mended('u1', 25), sold('u1', 7000)]);
    expect(view.price).toMatchObject([{ item_id: 'u1', came: 7000 }]);
    expect(view.price[0]!.low).toBeLessThan(view.price[0]!.expected);
    expect(view.minutes).toMatchObject([{ item_id: 'u1', came: 25 }]);
    expect(view.minutes[0]!.expected).toBeGreaterThan(0);
    expect(view.parts).toMatchObject([{ item_id: 'u1', came: 0 }]);
  });

  it('names the decisions that turned out best and worst, each with what made the difference', () => {
    const units = [...bought('lot', 'marsh-lane', ['u1', 'u2', 'u3'])];
    const view = viewOf([
      ...units,
      ...mended('u1'),
      sold('u1', 20_000),
      ...mended('u2', 600),
      sold('u2', 6000),
      sold('u3', 100, 'for-parts'),
    ]);
    expect(view.best.map(({ item_id }) => item_id)).toEqual(['u1']);
    expect(view.best[0]!.lesson).toMatch(/more than reckoned with/);
    expect(view.worst[0]!.item_id).toBe('u2');
    expect(view.worst[0]!.lesson).toMatch(/It took 600 min/);
    expect(view.worst.find(({ item_id }) => item_id === 'u3')!.lesson).toMatch(/and did not/);
  });

  it('begins again where an earlier event was corrected', () => {
    const calibrator = new Calibrator(models);
    const steps: Step[] = [...bought('lot', 'marsh-lane', ['u1']), ...mended('u1')];
    expect(forecast(viewOf(steps, calibrator), 'trial')!.count).toBe(2);
    const undone: Step = ['correction', { corrects: testId(steps.length) }];
    expect(forecast(viewOf([...steps, undone], calibrator), 'trial')!.count).toBe(1);
  });

  it('says how far it is when it is stopped, and goes on from there', () => {
    const calibrator = new Calibrator(models);
    const steps: Step[] = [...bought('lot', 'marsh-lane', ['u1']), ...mended('u1'), sold('u1', 6000)];
    const first = viewOf(steps, calibrator, () => true);
    expect([first.judged, first.to_judge]).toEqual([1, 5]);
    expect(viewOf(steps, calibrator).judged).toBe(5);
    expect(viewOf(steps, calibrator)).toEqual(viewOf(steps));
  });
});
