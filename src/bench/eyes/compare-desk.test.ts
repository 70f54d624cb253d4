import { beforeEach, describe, expect, it } from 'vitest';
import { mapped, type Homography } from '../../core/vision/index.ts';
import { openBench } from '../open-bench.ts';
import { memoryStore } from '../testing/memory-store.ts';
import { smallModels } from '../testing/small-model.ts';
import type { Bench } from '../bench.ts';
import type { Model } from '../models/index.ts';
import type { ComparisonView } from '../views/index.ts';
import { openCompareDesk, type CompareDesk } from './compare-desk.ts';
import type { PhotoComparison } from './comparer.ts';
import { memoryShelf } from './testing/memory-shelf.ts';
import { finding, ScriptedComparer, squareAt } from './testing/scripted-comparer.ts';

const [GOOD, BAD, OTHER] = ['a', 'b', 'c'].map((letter) => letter.repeat(64)) as [string, string, string];
const CORNERS = [
  [0.1, 0.7],
  [0.9, 0.7],
  [0.9, 0.1],
  [0.1, 0.1],
];

/** The lamp with a reference photo of its own and two parts on its board. */
function models(): Map<string, Model> {
  const all = new Map(smallModels());
  const lamp = all.get('lamp-1')!;
  const parts = [
    { ref: 'R1', x: 5, y: 25, rotation: 0, side: 'front', value: '1k', package: '0805', block: 'driver', nets: [], elements: [] },
    { ref: 'R2', x: 35, y: 5, rotation: 90, side: 'front', value: '1k', package: '0805', block: 'switch', nets: [], elements: [] },
  ];
  all.set('lamp-1', {
    ...lamp,
    photos: [{ side: 'board-front', path: 'lamp.jpg' }],
    circuit: { parts } as unknown as NonNullable<Model['circuit']>,
  });
  return all;
}

let bench: Bench;
let comparer: ScriptedComparer;
let desk: CompareDesk;
let answer: () => PhotoComparison | Promise<PhotoComparison>;
const errors: string[] = [];

const record = (kind: string, body: object): void => {
  const result = bench.record([{ kind, body }]);
  expect(result, JSON.stringify(result)).toMatchObject({ ok: true });
};

beforeEach(() => {
  let count = 0;
  const clock = {
    now: () => new Date('2026-05-01T09:00:00Z'),
    newId: () => `019f0000-0000-7000-8000-${String(++count).padStart(12, '0')}`,
  };
  bench = openBench({ store: memoryStore(), models: models(), clock, device: 'bench-1', version: '0' });
  answer = () => finding(squareAt(180, 180, { part: 'R1' }));
  comparer = new ScriptedComparer(() => answer());
  const photos = {
    get: async (hash: string) => (hash === OTHER ? null : { bytes: new TextEncoder().encode(hash), mediaType: 'image/jpeg' }),
  };
  const modelPhoto = async (path: string): Promise<Uint8Array> => new TextEncoder().encode(path);
  desk = openCompareDesk({
    bench,
    photos,
    comparer,
    shelf: memoryShelf(),
    modelPhoto,
    version: '1',
    log: (sentence) => errors.push(sentence),
  });
  const items = ['lamp-a', 'lamp-b'].map((id) => ({ item_id: id, name: id, model_id: 'lamp-1', expected_value_minor: 1000 }));
  record('lot-bought', { lot_id: 'lot-1', title: 'Lamps', seller: 'Fair', price_minor: 500, currency: 'GBP', items });
  record('photo-taken', { item_id: 'lamp-a', photo: BAD, side: 'board-front' });
  record('photo-taken', { item_id: 'lamp-b', photo: GOOD, side: 'board-front' });
});

const question = { item_id: 'lamp-a', photo: BAD, side: 'board-front' as const };
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

async function compared(): Promise<ComparisonView> {
  const started = await desk.start(question);
  if (!started.ok) throw new Error(started.code);
  return (await desk.settled(started.view.key))!;
}

describe('a photo that is compared', () => {
  it('is laid on the photo of the model, with the parts where its corners put them, and gives differences in mm with their block', async () => {
    record('reference-set', { model_id: 'lamp-1', side: 'board-front', photo: 'shipped', use: true, corners: CORNERS });
    const { stage, result } = await compared();
    expect(stage).toBe('ready');
    expect(comparer.asked[0]!.references.map(text)).toEqual(['lamp.jpg']);
    const [r1, r2] = comparer.asked[0]!.parts!;
    // 40 × 30 mm over 0.8 × 0.6 of the width: 0.02 a mm, from the lower left corner at (0.1, 0.7).
    expect([r1!.part, r1!.x, r1!.y]).toEqual(['R1', expect.closeTo(0.2), expect.closeTo(0.2)]);
    expect([r2!.part, r2!.x, r2!.y]).toEqual(['R2', expect.closeTo(0.8), expect.closeTo(0.6)]);
    expect(r2!.turnDeg).toBeCloseTo(-90);
    expect(result!.differences).toMatchObject([{ rank: 1, part: 'R1', block: 'driver', shows: 'missing', verdict: null }]);
    expect(result!.differences[0]!.outline_mm![0]).toEqual([4, 26]);
    const [x, y] = mapped(result!.board_map as unknown as Homography, 180, 180);
    expect([x, y]).toEqual([expect.closeTo(4), expect.closeTo(26)]);
    expect(result!.advice).toEqual(['tip the camera about 9° so that its right edge comes nearer to the board']);
    expect(result!.parallax_px).toBeCloseTo(3 * Math.tan((9.06 * Math.PI) / 180) * 20, 1);
  });

  it('names what nobody has looked at, squares of one reason together', async () => {
    const { result } = await compared();
    expect(result!.zones.map(({ reason, squares }) => [reason, squares.length])).toEqual([
      ['glare', 2],
      ['not-seen', 1],
    ]);
    expect(result!.differences[0]!.outline_mm).toBeNull();
  });

  it('is not compared twice, unless something has changed: what is normal is known to the next comparison', async () => {
    const first = await compared();
    expect((await compared()).key).toBe(first.key);
    expect(comparer.asked).toHaveLength(1);
    const { outline_photo: outline, shows, chance } = first.result!.differences[0]!;
    record('difference-judged', { item_id: 'lamp-a', side: 'board-front', photo: BAD, outline, shows, chance, verdict: 'normal' });
    expect((await desk.progress(first.key))!.result!.differences[0]!.verdict).toBe('normal');
    const next = await compared();
    expect(next.key).not.toBe(first.key);
    expect(comparer.asked[1]!.variations!.map(({ photo, outline: at }) => [text(photo), at])).toEqual([[BAD, outline]]);
  });

  it('is compared with chosen photos of good boards too, one with known corners first, and never with itself', async () => {
    record('reference-set', { model_id: 'lamp-1', side: 'board-front', photo: GOOD, use: true, corners: CORNERS });
    record('reference-set', { model_id: 'lamp-1', side: 'board-front', photo: BAD, use: true });
    await compared();
    expect(comparer.asked[0]!.references.map(text)).toEqual([GOOD, 'lamp.jpg']);
    record('reference-set', { model_id: 'lamp-1', side: 'board-front', photo: 'shipped', use: false });
    record('reference-set', { model_id: 'lamp-1', side: 'board-front', photo: GOOD, use: false });
    expect(await desk.start(question)).toMatchObject({ ok: false, code: 'no-reference' });
    expect(desk.references('lamp-1')!.sides[0]!.references.map(({ photo }) => photo)).toEqual([BAD]);
  });

  it('is stopped while it works, and begun anew when it is asked again', async () => {
    let finish: (value: PhotoComparison) => void = () => undefined;
    answer = () => new Promise((resolve) => void (finish = resolve));
    const started = await desk.start(question);
    if (!started.ok) throw new Error(started.code);
    const { key } = started.view;
    await expect.poll(async () => (await desk.progress(key))!.step).toBe('aligning');
    await desk.stop(key);
    expect((await desk.settled(key))!.stage).toBe('stopped');
    answer = () => finding();
    expect((await compared()).stage).toBe('ready');
    finish(finding());
  });

  it('is refused with what to do, and a failure is said and logged', async () => {
    answer = () => ({ ok: false, code: 'opposite-sides' });
    const refused = await compared();
    expect(refused).toMatchObject({
      stage: 'refused',
      result: null,
      problem: { code: 'opposite-sides', message: expect.stringMatching(/Turn the board over/) },
    });
    record('photo-taken', { item_id: 'lamp-a', photo: OTHER, side: 'board-front' });
    const started = await desk.start({ ...question, photo: OTHER });
    if (!started.ok) throw new Error(started.code);
    expect((await desk.settled(started.view.key))!.stage).toBe('failed');
    expect(errors).toContain('Photos could not be compared.');
  });

  it('is none of another unit', async () => {
    expect(await desk.start({ ...question, photo: GOOD })).toMatchObject({ ok: false, code: 'no-such-photo' });
    expect(await desk.start({ ...question, item_id: 'nothing' })).toMatchObject({ ok: false, code: 'no-such-item' });
  });
});

describe('a photo that is judged', () => {
  const ask = { photo: BAD, model_id: 'lamp-1', side: 'board-front' as const };

  it('is good when it was held as the reference', async () => {
    expect(await desk.judge(ask)).toMatchObject({ ok: true, view: { verdict: 'good', pose: { tilt_deg: 0 }, advice: [] } });
  });

  it('is to be taken again when it leans, is blurred, or shows the other side, each with its advice', async () => {
    comparer.judgement = {
      ok: true,
      quality: { sharpness: 0.1, brightness: 120, blinded: 0, black: 0, troubles: ['blurred'] },
      against: {
        ok: true,
        pose: { turnDeg: 0, tiltRightDeg: -8, tiltDownDeg: 0, tiltDeg: 8, scale: 1 },
        reference: { width: 1000, height: 750, toOriginal: 1 },
      },
    };
    const judged = await desk.judge(ask);
    if (!judged.ok) throw new Error(judged.code);
    expect(judged.view.verdict).toBe('retake');
    expect(judged.view.advice.join(' ')).toMatch(/blurred.*tip the camera about 8° so that its left edge/);
    comparer.judgement = { ...comparer.judgement, against: { ok: false, code: 'opposite-sides' } };
    expect(await desk.judge(ask)).toMatchObject({ view: { verdict: 'retake', pose: null, problem: { code: 'opposite-sides' } } });
  });
});
