import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FitsSeenView } from '../../src/bench/views/index.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { emptyBench } from './empty-bench.ts';
import { recordEvents, UNKNOWN_PLAYER } from './grow-board.ts';

const on = emptyBench();

const pins = [20, 22, 24].map((x) => [x, 10]);
const pad = (i: number, apart: number) => ({ pin: String(i + 1), x_mm: apart * i, y_mm: 0, w_mm: 1, h_mm: 1 });
const bag = (id: string, apart: number) => ({
  kind: 'part-bought',
  body: {
    bag_id: id,
    part: 'socket',
    name: `Sockets ${apart} mm`,
    count: 3,
    price_minor: 300,
    currency: 'GBP',
    pattern: { name: 'socket', kind: 'connector', pads: [0, 1, 2].map((i) => pad(i, apart)) },
  },
});

describe.each(SCREENS)('what fits into a model that grows, on $name', (screen) => {
  const modelId = `unknown-${screen.width}`;
  let walk: BenchWalk;

  beforeAll(async () => {
    await recordEvents(on.server.url, [
      { kind: 'model-begun', body: { ...UNKNOWN_PLAYER, model_id: modelId } },
      { kind: 'model-fact-set', body: { model_id: modelId, section: 'head', id: 'board', value: { width_mm: 70, height_mm: 55 } } },
      {
        kind: 'model-parts-placed',
        body: { model_id: modelId, parts: [{ ref: 'J4', kind: 'connector', side: 'front', x_mm: 22, y_mm: 10, pins }] },
      },
      bag(`right-${screen.width}`, 2),
      bag(`wide-${screen.width}`, 2.5),
    ]);
    walk = await BenchWalk.begin(on.browser, on.server, screen);
  });
  afterAll(() => walk.end());

  it('is noted as it is tried, and counted by what came of it', async () => {
    await walk.goto(`/models/${modelId}`);
    const fits = walk.region('What fits into it');
    await fits.getByLabel('Where').selectOption({ label: 'Display' });
    for (const outcome of ['After bending or filing', 'It does not fit']) {
      await fits.getByLabel('Which part').fill('Glass of a clock, 2.4 inch');
      await fits.getByRole('radio', { name: outcome }).check();
      await walk.noted(() => walk.press(fits, 'Note what was tried'));
    }
    await fits.getByText('Glass of a clock, 2.4 inch: went in 1 time of 2, 1 time after bending or filing').waitFor();
    const { slots } = await walk.ask<FitsSeenView>(`/api/models/${modelId}/fits`);
    expect(slots.flatMap(({ lines }) => lines.map(({ fits: went, bent, fails }) => [went, bent, fails]))).toEqual([[0, 1, 1]]);
    await walk.expectAccessible();
  });

  it('is looked for in the drawer by the pads of a marked part', async () => {
    await walk.goto(`/models/${modelId}/board`);
    const parts = walk.region('Parts');
    await walk.press(await walk.unfold(parts, /^All that is marked: 1 part/), 'J4');
    const here = await walk.unfold(parts, 'Which parts fit at J4?');
    const answers = here.locator('.fits > li > details > summary');
    await answers.first().waitFor();
    const own = (await answers.allInnerTexts()).filter((text) => text.startsWith('Sockets'));
    expect(own.filter((text) => text.startsWith('Sockets 2 mm')).every((text) => text.endsWith('It fits.'))).toBe(true);
    expect(own.filter((text) => text.startsWith('Sockets 2.5 mm')).every((text) => text.endsWith('It does not line up.'))).toBe(true);
    expect(own.length).toBeGreaterThanOrEqual(2);
    await walk.expectAccessible();
  });
});
