import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ModelFile, ReferenceReading } from '../../src/bench/models/index.ts';
import type { BoardMarks } from '../../src/bench/views/index.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { emptyBench } from './empty-bench.ts';
import { boardStage, clickPixel, onPicture, recordEvents, TERN_CORNERS, TERN_PHOTO, UNKNOWN_PLAYER } from './grow-board.ts';

interface ModelAnswer {
  readonly file: ModelFile;
  readonly readings: readonly ReferenceReading[];
}

const BOARD = { width: 70, height: 55 };
const PHOTO = join(import.meta.dirname, '../..', TERN_PHOTO.file);

const on = emptyBench();

describe.each(SCREENS)('the picture of a board, on $name', (screen) => {
  const modelId = `unknown-${screen.width}`;
  let walk: BenchWalk;
  const stage = (): Locator => boardStage(walk.page);
  const marks = (): Promise<BoardMarks> => walk.ask<BoardMarks>(`/api/models/${modelId}/marks`);
  const refs = async (): Promise<string[]> => (await marks()).parts.map(({ ref }) => ref);

  async function tap(x: number, y: number): Promise<void> {
    await stage().locator('svg').scrollIntoViewIfNeeded();
    const position = await onPicture(stage(), BOARD, x, y);
    await (screen.touch ? stage().locator('svg').tap({ position }) : stage().locator('svg').click({ position }));
  }

  beforeAll(async () => {
    await recordEvents(on.server.url, [{ kind: 'model-begun', body: { ...UNKNOWN_PLAYER, model_id: modelId } }]);
    walk = await BenchWalk.begin(on.browser, on.server, screen);
    await walk.goto(`/models/${modelId}/board`);
  });
  afterAll(() => walk.end());

  it('lies on the photo that is taken in, by its scale and the corners of the board', async () => {
    const photos = walk.region('Photos');
    await walk.noted(() => photos.getByLabel('Add: photo of the front, taken straight from above').setInputFiles(PHOTO));
    const photo = photos.getByRole('group', { name: /^Photo: arrow keys/ });
    await photos.getByLabel('Distance between the two points (mm)').fill('70');
    await clickPixel(photo, TERN_PHOTO, ...TERN_CORNERS.lowerLeft);
    await clickPixel(photo, TERN_PHOTO, ...TERN_CORNERS.lowerRight);
    await photos.getByText('The whole photo counts as the board').waitFor();
    await photos.getByRole('radio', { name: 'Corners' }).check();
    for (const [x, y] of [TERN_CORNERS.lowerLeft, TERN_CORNERS.lowerRight, TERN_CORNERS.upperLeft])
      await clickPixel(photo, TERN_PHOTO, x, y);
    await photos.getByText(/The board is (69|70)\.\d by (54|55)\.\d mm\./).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(photos, 'Keep how it lies'));
    const { front } = await marks();
    expect(front!.corners).toHaveLength(3);
    expect(front!.size).toEqual([1600, 1200]);
    await stage().locator('image').waitFor();
  });

  it('marks parts one click each, with numbers that count on, and a row of pins by two', async () => {
    const parts = walk.region('Parts');
    await parts.getByLabel('Kind').selectOption('capacitor');
    await parts.getByLabel('Value', { exact: true }).fill('100n');
    await walk.noted(() => tap(17, 4.5));
    await walk.noted(() => tap(24, 13.5));
    await parts.getByLabel('Next reference').fill('C11');
    await walk.noted(() => tap(48, 18));
    await parts.getByRole('radio', { name: 'Row of pins' }).check();
    await parts.getByLabel('Kind').selectOption('connector');
    await parts.getByLabel('Pins', { exact: true }).fill('6');
    await tap(10, 50);
    await walk.noted(() => tap(20, 50));
    const { parts: kept } = await marks();
    expect(kept.map(({ ref, value, pins }) => [ref, value, pins.length])).toEqual([
      ['C1', '100n', 0],
      ['C2', '100n', 0],
      ['C11', '100n', 0],
      ['J1', '', 6],
    ]);
    const [c1] = kept;
    expect(Math.hypot(c1!.x_mm - 17, c1!.y_mm - 4.5)).toBeLessThan(0.4);
    await walk.expectAccessible();
  });

  it('takes a step back as a correction and does it again, copies, turns and takes away, by buttons', async () => {
    const parts = walk.region('Parts');
    await walk.noted(() => walk.press(parts, 'Undo'));
    expect(await refs()).toEqual(['C1', 'C2', 'C11']);
    await walk.noted(() => walk.press(parts, 'Redo'));
    expect(await refs()).toEqual(['C1', 'C2', 'C11', 'J1']);
    const list = await walk.unfold(parts, /^All that is marked: 4 parts/);
    await walk.press(list, 'C11');
    const selected = walk.region('Selected: C11');
    await walk.noted(() => walk.press(selected, 'Turn'));
    await walk.press(selected, 'Copy');
    await walk.noted(() => walk.press(parts, 'Paste'));
    expect((await marks()).parts.map(({ ref, rotation_deg }) => [ref, rotation_deg]).slice(2)).toEqual([
      ['C11', 90],
      ['J1', 0],
      ['C12', 90],
    ]);
    await walk.noted(() => walk.press(walk.region('Selected: C12'), 'Take away'));
    expect(await refs()).toEqual(['C1', 'C2', 'C11', 'J1']);
  });

  it('shows what the photo proposes, to accept many at once or to wave away', async () => {
    const parts = walk.region('Parts');
    await parts.getByRole('radio', { name: 'Place parts' }).check();
    await parts.getByLabel('Kind').selectOption('capacitor');
    const before = await refs();
    await walk.press(parts, 'Propose from the photo');
    const accept = parts.getByRole('button', { name: /^Accept \d+ of all kinds$/ });
    await accept.waitFor({ timeout: 60_000 });
    const proposed = Number(/\d+/.exec(await accept.innerText())![0]);
    expect(proposed).toBeGreaterThan(40);
    expect(await stage().locator('.ghost').count()).toBe(proposed);
    const alike = parts.getByRole('button', { name: /^Accept \d+ like the part in hand$/ });
    const many = Number(/\d+/.exec(await alike.innerText())![0]);
    expect(many).toBeGreaterThan(5);
    await walk.noted(() => alike.click());
    const accepted = (await marks()).parts.filter(({ ref }) => !before.includes(ref));
    expect(accepted.map(({ kind, package: name }) => `${kind} ${name}`)).toEqual(Array.from({ length: many }, () => 'capacitor 0603'));
    expect(await stage().locator('.ghost').count()).toBe(proposed - many);
    await walk.expectAccessible();
    await walk.press(parts, /^Wave \d+ proposals away$/);
    expect(await stage().locator('.ghost').count()).toBe(0);
    await walk.noted(() => walk.press(parts, 'Undo'));
    expect(await refs()).toEqual(before);
  });

  it('is worked by the keys alone', async () => {
    const parts = walk.region('Parts');
    await parts.getByRole('radio', { name: 'Place parts' }).check();
    await parts.getByLabel('Kind').selectOption('resistor');
    await stage().focus();
    for (let i = 0; i < 4; i++) await stage().press('Shift+ArrowDown');
    await stage().press('r');
    await walk.noted(() => stage().press('Enter'));
    expect((await marks()).parts.find(({ ref }) => ref === 'R1')).toMatchObject({ rotation_deg: 90, package: '0603' });
    await stage().press('s');
    await stage().press('Enter');
    const before = (await marks()).parts.find(({ ref }) => ref === 'R1')!;
    await walk.noted(() => stage().press('Shift+ArrowRight'));
    const after = (await marks()).parts.find(({ ref }) => ref === 'R1')!;
    expect(after.x_mm - before.x_mm).toBeGreaterThan(0.5);
    await walk.noted(() => stage().press('Delete'));
    await walk.noted(() => stage().press('Control+z'));
    expect(await refs()).toContain('R1');
  });

  it('finds connections by tapping pins, and asks before two supplies become one', async () => {
    await walk.page.getByRole('radio', { name: 'Probe connections' }).check();
    const connections = walk.region('Connections');
    const probe = async (from: string, to: string): Promise<void> => {
      await connections.getByLabel('From pin').fill(from);
      await connections.getByLabel('To pin').fill(to);
      await walk.press(connections, 'Note as joined');
    };
    const byRef = new Map((await marks()).parts.map((part) => [part.ref, part]));
    const [first, second] = [byRef.get('J1')!.pins[0]!, byRef.get('J1')!.pins[1]!];
    await tap(first[0], first[1]);
    await connections.getByText('One lead is held on J1.1.').waitFor();
    await walk.noted(() => tap(second[0], second[1]));
    expect((await marks()).joins).toEqual([{ pins: ['J1.1', 'J1.2'], joined: true }]);
    await walk.noted(() => probe('C1.1', 'C2.1'));
    await walk.noted(async () => {
      await connections.getByLabel(/^Name of the net n_j1_1/).fill('battery');
      await connections.getByLabel(/^Name of the net n_j1_1/).press('Enter');
    });
    await walk.noted(async () => {
      await connections.getByLabel(/^Name of the net n_c1_1/).fill('3.3 V');
      await connections.getByLabel(/^Name of the net n_c1_1/).press('Enter');
    });
    expect((await marks()).names).toEqual([
      { pin: 'J1.1', name: 'vbat' },
      { pin: 'C1.1', name: 'v33' },
    ]);
    await probe('C2.1', 'J1.2');
    await connections.getByText(/This makes one net of two supplies/).waitFor();
    await walk.expectAccessible();
    await walk.press(connections, 'Do not note it');
    expect((await marks()).joins).toHaveLength(2);
  });

  it('walks over the points of a good board in an order of little effort, each reading stored at once', async () => {
    await walk.page.getByRole('radio', { name: 'Mark parts' }).check();
    const parts = walk.region('Parts');
    await parts.getByRole('radio', { name: 'Place parts' }).check();
    await parts.getByLabel('Kind').selectOption('test-point');
    for (const [name, x] of [
      ['V33', 60],
      ['VSYS', 50],
    ] as const) {
      await parts.getByLabel('Value', { exact: true }).fill(name);
      await walk.noted(() => tap(x, 45));
    }
    await walk.page.getByRole('radio', { name: 'Measure a good board' }).check();
    const readings = walk.region('Known-good readings');
    const loose = await walk.unfold(readings, '2 marked test points not measured yet');
    await loose.getByLabel('Measured in').selectOption('volts');
    await loose.getByLabel('Power').selectOption('battery');
    await walk.noted(() => walk.press(loose, 'Measure them so'));
    const { file } = await walk.ask<ModelAnswer>(`/api/models/${modelId}`);
    expect(file.points.filter(({ id }) => id.startsWith('V')).map(({ id, mode, power }) => [id, mode, power])).toEqual([
      ['V33', 'volts', 'battery'],
      ['VSYS', 'volts', 'battery'],
    ]);
    while (!/^(V33|VSYS)/.test(await readings.locator('h3').innerText())) {
      const before = await readings.locator('h3').innerText();
      await walk.press(readings, 'Leave this one out');
      await expect.poll(() => readings.locator('h3').innerText()).not.toBe(before);
    }
    await readings.getByText(/Power it from its battery/).waitFor();
    const [first] = (await readings.locator('h3').innerText()).split(',');
    for (const key of ['3', 'Decimal point', '2', '9']) await walk.press(readings, key);
    await readings.getByText('= 3.29 V').waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(readings, 'Note it and go on'));
    const after = await walk.ask<ModelAnswer>(`/api/models/${modelId}`);
    expect(after.readings).toEqual([expect.objectContaining({ board: 'good-1', point: first, mode: 'volts', value: 3.29 })]);
    expect(await readings.locator('h3').innerText()).not.toContain(`${first},`);
  });
});
