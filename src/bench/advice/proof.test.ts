import { describe, expect, it } from 'vitest';
import { Id } from '../events/index.ts';
import { ModelFile, type Model } from '../models/index.ts';
import { proofOf } from './proof.ts';
import { benchOf, bought, moved } from './testing/bench-of.ts';
import { pocketModel } from './testing/pocket-model.ts';
import { touchedByWork } from './touched-by-work.ts';

const proofAfter = (...steps: Parameters<typeof benchOf>[0]) =>
  proofOf(benchOf([...bought('lot', 'marsh-lane', ['u1']), ...steps]).items.get('u1')!, pocketModel());

const step = (id: string, outcome: string, reason = ''): Parameters<typeof benchOf>[0][number] => [
  'proof-step-done',
  { item_id: 'u1', step: id, outcome, reason },
];

describe('the proof of a unit', () => {
  it('asks for every function and for safety, each with how to do it', () => {
    const { steps, ready } = proofAfter();
    expect(steps.map(({ id }) => id)).toEqual([
      'works.power',
      'works.picture',
      'works.sound',
      'charges-safely',
      'no-hot-spots',
      'screws-back',
      'battery-door',
    ]);
    expect(steps.every(({ id, how }) => Id.safeParse(id).success && how.length > 20)).toBe(true);
    expect(steps.find(({ id }) => id === 'charges-safely')!.cautions).toEqual(['lithium-cell']);
    expect(steps.find(({ id }) => id === 'screws-back')!.how).toContain('5');
    expect(ready).toBe(false);
  });

  it('is ready when each step is passed or signed off, and not when one failed', () => {
    const ids = proofAfter().steps.map(({ id }) => id);
    const passed = ids.map((id) => step(id, 'pass'));
    expect(proofAfter(...passed).ready).toBe(true);
    expect(proofAfter(...passed, step('battery-door', 'signed-off', 'none on this one')).ready).toBe(true);
    expect(proofAfter(...passed, step('works.sound', 'fail')).ready).toBe(false);
    expect(proofAfter(...passed.slice(1)).ready).toBe(false);
  });

  it('asks nothing of charging where there is no cell that is charged', () => {
    const alkaline = pocketModel({ cell: { volts: 1.5, chemistry: 'alkaline' } });
    const unit = benchOf(bought('lot', 'marsh-lane', ['u1'])).items.get('u1')!;
    expect(proofOf(unit, alkaline).steps.map(({ id }) => id)).not.toContain('charges-safely');
  });

  it('has no steps for an assembly by itself', () => {
    const state = benchOf([...bought('lot', 'marsh-lane', ['u1']), moved('b1', 'board', 'u1', null)]);
    expect(proofOf(state.items.get('b1')!, pocketModel()).steps).toEqual([]);
  });

  it('says of each function what the work touched of it, and nothing where there was none', () => {
    expect(proofAfter().steps.every(({ because }) => because.length === 0)).toBe(true);
    const mended = proofAfter(['remedy-done', { item_id: 'u1', remedy: 'new-speaker', minutes: 5, outcome: 'mended' }]);
    const because = (id: string) => mended.steps.find((each) => each.id === id)!.because;
    expect(because('works.sound')).toEqual(['The work was on: speaker.']);
    expect(because('works.picture')).toEqual([]);
    expect(because('battery-door')).toEqual([]);
  });

  it('has limits for every step', () => {
    expect(proofAfter().steps.filter(({ limits }) => limits.length === 0)).toEqual([]);
  });
});

describe('what work could have touched', () => {
  const lamp = pocketModel();
  const model: Model = {
    ...lamp,
    file: ModelFile.parse({
      ...lamp.file,
      blocks: lamp.file.blocks.map((block) => {
        const x = { converter: 10, processor: 18, switch: 40 }[block.id];
        return x === undefined ? block : { ...block, at: [x, 10] };
      }),
      steps: [
        { id: 'open', name: 'Open it', minutes: 1, reaches: 'open' },
        { id: 'ribbon', name: 'Unplug the display', minutes: 1, after: ['open'], frees: ['display'] },
        { id: 'board', name: 'Lift the board', minutes: 1, after: ['ribbon'], reaches: 'board-out', frees: ['board'] },
      ],
    }),
  };
  const touched = (remedy: string) =>
    touchedByWork(model, [
      { kind: 'remedy', remedy, place: null, outcome: 'mended', minutes: 5, eventId: 'e', at: '2026-01-01T00:00:00Z' },
    ]);

  it('is what it was on, what lies near the heat, and what was unplugged on the way', () => {
    expect(touched('new-converter')).toEqual(
      new Map([
        ['converter', 'worked-on'],
        ['processor', 'near-heat'],
        ['display', 'opened'],
        ['switch', 'opened'],
        ['slot-contacts', 'opened'],
      ]),
    );
  });

  it('is all of an assembly that came or went', () => {
    const touchedBlocks = touchedByWork(model, [
      { kind: 'slot', slot: 'display', came: null, left: 'd1', eventId: 'e', at: '2026-01-01T00:00:00Z' },
    ]);
    expect(touchedBlocks.get('display')).toBe('moved');
  });

  it('is nothing of a remedy that the model does not know', () => {
    expect(touched('pray').size).toBe(0);
  });
});

describe('what was measured of a step', () => {
  const sound = (level: number): Parameters<typeof benchOf>[0][number] => [
    'test-done',
    { item_id: 'u1', test: 'sound', verdict: 'good', text: 'Clear.', values: [{ name: 'Level', value: level, unit: 'dB' }] },
  ];
  const measured = (...steps: Parameters<typeof benchOf>[0]) => proofAfter(...steps).steps.find(({ id }) => id === 'works.sound')!.measured;

  it('is that of the last test since the work, and stands beside its own step only', () => {
    expect(measured(sound(-12), sound(-14))).toEqual(['Clear.', 'Level -14 dB']);
    expect(proofAfter(sound(-12)).steps.filter((each) => each.measured.length > 0)).toHaveLength(1);
    expect(measured(sound(-12), ['opened-to', { item_id: 'u1', stage: 'open' }])).toEqual([]);
  });

  it('decides no step by itself', () => {
    expect(proofAfter(sound(-12)).steps.find(({ id }) => id === 'works.sound')!.outcome).toBe('open');
  });

  it('has limits and a way to do it beside every step', () => {
    expect(proofAfter().steps.filter(({ limits, how }) => limits.length === 0 || how === '')).toEqual([]);
  });
});
