import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ModelFile } from '../../src/bench/models/index.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { emptyBench } from './empty-bench.ts';
import { clickPixel, recordEvents, TERN_PHOTO, UNKNOWN_PLAYER } from './grow-board.ts';

const PHOTO = join(import.meta.dirname, '../..', TERN_PHOTO.file);

const on = emptyBench();

describe.each(SCREENS)('the opening of a device that nobody has opened, on $name', (screen) => {
  const modelId = `unknown-${screen.width}`;
  const unit = `unit-${screen.width}`;

  it('is recorded step by step with the places of its screws, and guides the next one', async () => {
    await recordEvents(on.server.url, [
      { kind: 'model-begun', body: { ...UNKNOWN_PLAYER, model_id: modelId } },
      {
        kind: 'lot-bought',
        body: {
          lot_id: `lot-${screen.width}`,
          title: 'One player',
          seller: 'A stall',
          price_minor: 500,
          currency: 'GBP',
          items: [{ item_id: unit, name: 'Second one', model_id: modelId, expected_value_minor: 2000 }],
        },
      },
      { kind: 'item-received', body: { item_id: unit } },
    ]);
    const walk = await BenchWalk.begin(on.browser, on.server, screen);
    await walk.goto(`/models/${modelId}/opening`);
    const now = walk.region('The step that you do now');
    await walk.noted(() => walk.press(now, 'Put them away: I record all of it'));
    await now.getByLabel('Drive').fill('Three-point');
    await now.getByLabel('Length (mm)').fill('6');
    await now.getByLabel('Add: photo of this side').setInputFiles(PHOTO);
    const photo = now.getByRole('group', { name: /^Photo: arrow keys/ });
    await clickPixel(photo, TERN_PHOTO, 240, 170);
    await clickPixel(photo, TERN_PHOTO, 1360, 1020);
    await walk.expectAccessible();
    await walk.noted(() => walk.press(now, 'Note: Take out 2 screws, Three-point, 6 mm'));
    await now.getByRole('radio', { name: 'Lift' }).check();
    await now.getByLabel('What', { exact: true }).fill('the back shell');
    await now.getByLabel('How open it is then').selectOption('open');
    await now.getByRole('checkbox', { name: 'sharp' }).check();
    await walk.noted(() => walk.press(now, 'Note: Lift the back shell'));
    const { file } = await walk.ask<{ file: ModelFile }>(`/api/models/${modelId}`);
    expect(file.steps.map(({ name, reaches, cautions }) => [name, reaches, cautions])).toEqual([
      ['Take out 2 screws, Three-point, 6 mm', undefined, []],
      ['Lift the back shell', 'open', ['sharp']],
    ]);
    expect(file.fasteners.filter(({ drive }) => drive === 'Three-point').map(({ count, length_mm }) => [count, length_mm])).toEqual([
      [2, 6],
    ]);
    await walk.goto(`/bench/${unit}/opening`);
    await walk.page.getByRole('heading', { name: 'Take out 2 screws, Three-point, 6 mm' }).waitFor();
    await walk.page.getByRole('img', { name: 'Take out 2 screws, Three-point, 6 mm: 2 places on the photo' }).waitFor();
    await walk.expectAccessible();
    await walk.end();
  });
});
