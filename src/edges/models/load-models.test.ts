import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadModels } from './load-models.ts';

/** A model of one block, one idea a line, so that a changed line is where the mistake is told. */
const LINES = [
  'format: 1',
  'id: lamp',
  'name: Lamp',
  'level: 1',
  'currency: GBP',
  'prices: { working: 900, spread: 0.2, for_parts: 100 }',
  'opening_minutes: { open: 2, board_out: 2 }',
  'blocks:',
  '  - { id: bulb, name: Bulb }',
  '  - { id: cell, name: Cell }',
  'functions:',
  '  - id: light',
  '    name: Light',
  '    needs: [bulb, cell]',
  'faults:',
  '  - id: bulb-open',
  '    name: Bulb open',
  '    block: bulb',
  '    mode: open',
  '    rate: 0.5',
  'points:',
  '  - { id: BULB, name: Bulb, block: bulb, mode: ohms }',
  'checks:',
  '  - { id: try, name: Try, minutes: 1, try: light }',
  'remedies:',
  '  - { id: new-bulb, name: New bulb, kind: replace, mends: { bulb-open: 0.9 }, minutes: 2 }',
];
const text = (changed: Readonly<Record<number, string>> = {}): string => LINES.map((line, index) => changed[index + 1] ?? line).join('\n');

let dir: string;
beforeEach(async () => void (dir = await mkdtemp(join(tmpdir(), 'models-'))));
afterEach(() => rm(dir, { recursive: true }));

async function write(files: Readonly<Record<string, string | Uint8Array>>): Promise<void> {
  for (const [name, content] of Object.entries(files)) {
    await mkdir(dirname(join(dir, name)), { recursive: true });
    await writeFile(join(dir, name), content);
  }
}

/** What is told of one faulty file beside a good one, which must load all the same. */
async function toldOf(model: string | Uint8Array, others: Readonly<Record<string, string>> = {}) {
  await write({ 'lamp/model.yaml': model, 'torch/model.yaml': text({ 2: 'id: torch' }), ...others });
  const { models, problems } = await loadModels(dir);
  expect([...models.keys()]).toContain('torch');
  return { models, problems };
}

describe('loadModels', () => {
  it('loads a model with its readings and its photos by side', async () => {
    await write({
      'lamp/model.yaml': text(),
      'lamp/readings.csv': '\uFEFFboard;point;mode;value;unit\r\ngood-1;BULB;ohms;12,3;Ω\r\n',
      'lamp/photos/board-front.jpg': 'x',
      'lamp/photos/back.webp': 'x',
      'lamp/photos/notes.txt': 'x',
      'model.schema.json': '{}',
    });
    const { models, problems } = await loadModels(dir);
    expect(problems).toEqual([]);
    expect([...models.keys()]).toEqual(['lamp']);
    const lamp = models.get('lamp')!;
    expect(lamp.readings).toEqual([{ board: 'good-1', point: 'BULB', mode: 'ohms', value: 12.3 }]);
    expect(lamp.photos).toEqual([
      { side: 'back', path: join(dir, 'lamp/photos/back.webp') },
      { side: 'board-front', path: join(dir, 'lamp/photos/board-front.jpg') },
    ]);
  });

  it.each<[string, Record<number, string>, { line: number; column?: number; field: string; code: string }]>([
    [
      'a wrong type',
      { 6: 'prices: { working: nine, spread: 0.2, for_parts: 100 }' },
      { line: 6, column: 11, field: 'prices.working', code: 'model-shape' },
    ],
    [
      'half a penny',
      { 6: 'prices: { working: 9.5, spread: 0.2, for_parts: 100 }' },
      { line: 6, field: 'prices.working', code: 'model-shape' },
    ],
    ['an unknown field', { 13: '    nmae: Light' }, { line: 12, field: 'functions.0.name', code: 'model-shape' }],
    ['an unknown section', { 21: 'ponits:' }, { line: 21, column: 1, field: 'ponits', code: 'model-unknown-field' }],
    ['a bad chance', { 20: '    rate: 5' }, { line: 20, column: 5, field: 'faults.0.rate', code: 'model-shape' }],
    ['an unknown mode', { 19: '    mode: broken' }, { line: 19, field: 'faults.0.mode', code: 'model-shape' }],
    ['a dangling block', { 18: '    block: blub' }, { line: 18, column: 5, field: 'faults.0.block', code: 'model-unknown-name' }],
    [
      'a dangling need',
      { 14: '    needs: [bulb, cel]' },
      { line: 14, column: 19, field: 'functions.0.needs.1', code: 'model-unknown-name' },
    ],
    [
      'a dangling fault',
      { 26: LINES[25]!.replace('bulb-open', 'bulb-shut') },
      { line: 26, field: 'remedies.0.mends.bulb-shut', code: 'model-unknown-name' },
    ],
    ['a second id', { 10: '  - { id: bulb, name: Cell }' }, { line: 10, column: 7, field: 'blocks.1.id', code: 'model-duplicate-id' }],
    [
      'two kinds of check',
      { 24: '  - { id: try, name: Try, minutes: 1, try: light, look: bulb }' },
      { line: 24, field: 'checks.0', code: 'model-check-kind' },
    ],
    ['another id than the folder', { 2: 'id: lmap' }, { line: 2, column: 1, field: 'id', code: 'model-wrong-id' }],
    ['an unknown base', { 3: 'name: Lamp\nbased_on: lamp-0' }, { line: 4, column: 1, field: 'based_on', code: 'model-base' }],
    ['a tab', { 13: '\tname: Light' }, { line: 13, column: 1, field: 'the file', code: 'model-syntax' }],
    ['a key given twice', { 19: '    block: cell' }, { line: 19, column: 5, field: 'the file', code: 'model-syntax' }],
    ['an open quote', { 3: 'name: "Lamp' }, { line: 3, field: 'the file', code: 'model-syntax' }],
    ['a tag', { 3: 'name: !secret Lamp' }, { line: 3, column: 7, field: 'the file', code: 'model-syntax' }],
  ])('tells %s with file, line, field and what to do next', async (_, changed, expected) => {
    const { models, problems } = await toldOf(text(changed));
    expect(models.has('lamp')).toBe(false);
    expect(problems).toContainEqual(expect.objectContaining({ ok: false, model: 'lamp', file: 'lamp/model.yaml', ...expected }));
    for (const { next, message } of problems) {
      expect(next).toMatch(/\.$/);
      expect(message).toMatch(/^[^A-Z].*[^.]$/);
    }
  });

  it('tells every problem of a file, not the first alone', async () => {
    const { problems } = await toldOf(text({ 18: '    block: blub', 14: '    needs: [blub, cell]' }));
    expect(problems.map(({ line }) => line).sort()).toEqual([14, 18]);
  });

  it('refuses aliases that multiply, and takes no time over it', async () => {
    const bomb = [
      'a: &a [x, x, x, x, x, x, x, x, x, x]',
      ...'bcdefghi'.split('').map((c, i) => `${c}: &${c} [${Array(10).fill(`*${'abcdefgh'[i]}`).join(', ')}]`),
    ];
    const { problems } = await toldOf(bomb.join('\n'));
    expect(problems).toMatchObject([{ file: 'lamp/model.yaml', line: 1, field: 'the file', code: 'model-aliases' }]);
  });

  it.each(['[', '{a: ', '- ', '? ', 'a: ', '- &x - '])(
    'refuses "%s" nested without end, before it can exhaust the stack',
    async (opening) => {
      const { problems } = await toldOf(opening.repeat(100_000));
      expect(problems).toMatchObject([{ file: 'lamp/model.yaml', line: 1, field: 'the file', message: 'is nested too deeply' }]);
    },
  );

  it('refuses what is indented without end', async () => {
    const stairs = Array.from({ length: 400 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n');
    expect((await toldOf(stairs)).problems).toMatchObject([{ code: 'model-syntax', message: 'is nested too deeply' }]);
  });

  it('refuses a file that is too large, is not text, or is empty', async () => {
    expect((await toldOf(`${text()}\n# ${'x'.repeat(2 * 2 ** 20)}`)).problems).toMatchObject([
      { code: 'model-too-large', line: 1, field: 'the file' },
    ]);
    expect((await toldOf(new Uint8Array([0xff, 0xfe, 0x00]))).problems).toMatchObject([{ code: 'model-unreadable', line: 1 }]);
    expect((await toldOf('')).problems).toMatchObject([{ code: 'model-shape', line: 1, field: 'the file' }]);
  });

  it('names a folder that holds no model, and a folder of models that is not there', async () => {
    await mkdir(join(dir, 'empty'));
    expect((await loadModels(dir)).problems).toMatchObject([
      { file: 'empty/model.yaml', code: 'model-unreadable', message: 'cannot be read (ENOENT)' },
    ]);
    expect((await loadModels(join(dir, 'nowhere'))).problems).toMatchObject([{ file: join(dir, 'nowhere'), code: 'model-unreadable' }]);
  });

  it('tells a bad line of readings by its number, and keeps the model and the good lines', async () => {
    const csv =
      'board,point,mode,value,unit\ngood-1,BULB,ohms,12.3,Ω\n\n"good\n2",BULB,ohms,"12,3",Ω\ngood-3,BLUB,ohms,12.1,Ω\ngood-4,BULB,ohms,12,1,Ω\n';
    const { models, problems } = await toldOf(text(), { 'lamp/readings.csv': csv });
    expect(models.get('lamp')!.readings.map(({ value }) => value)).toEqual([12.3, 12.3]);
    expect(problems).toMatchObject([
      { model: 'lamp', file: 'lamp/readings.csv', line: 6, field: 'point', code: 'model-readings' },
      { model: 'lamp', file: 'lamp/readings.csv', line: 7, field: 'value', code: 'model-readings' },
    ]);
  });
});
