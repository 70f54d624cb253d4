import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { randomStream } from '../dist/core/numeric/random.js';
import { loadModels } from '../dist/edges/models/index.js';
import { ROOT } from './run.mjs';
import { boardRelief } from './demo-photos/board-relief.mjs';
import { photograph } from './demo-photos/camera.mjs';
import { layoutBoard } from './demo-photos/layout-board.mjs';
import { corrieFront, ternBack, ternFront } from './demo-photos/shell-relief.mjs';

/**
 * Draws the photos of the demo as demo/photos.yaml lists them, into demo/photos/<SHA-256>.jpg with their names in
 * demo/photo-names.json, and the reference photos into models/<id>/photos. Names given as arguments draw only those.
 */
const DEMO = join(ROOT, 'demo');
const SHELLS = { 'tern-front': ternFront, 'tern-back': ternBack, 'corrie-front': corrieFront };

const { boards, references, scenes } = parse(readFileSync(join(DEMO, 'photos.yaml'), 'utf8'));
const { models } = await loadModels(join(ROOT, 'models'));
const layouts = new Map();

function layoutOf(model) {
  if (!layouts.has(model)) layouts.set(model, layoutBoard(models.get(model).file, randomStream(`placement ${model}`)));
  return layouts.get(model);
}

function reliefOf(scene, random) {
  if (scene.shell) return SHELLS[scene.shell]({ ...scene, random });
  return boardRelief(layoutOf(scene.board), { ...boards[scene.board], damage: scene.damage ?? [], random });
}

async function draw(scene) {
  const random = randomStream(`photo ${scene.name}`);
  const relief = reliefOf(scene, random);
  return photograph(relief, { pose: {}, ground: 'mat', ...scene, random });
}

const only = process.argv.slice(2);
const isWanted = (scene) => only.length === 0 || only.includes(scene.name);

for (const scene of references.filter(isWanted)) {
  const folder = join(ROOT, 'models', scene.board, 'photos');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${scene.side}.jpg`), await draw(scene));
  console.log(`models/${scene.board}/photos/${scene.side}.jpg`);
}

const NAMES = join(DEMO, 'photo-names.json');
const PHOTOS = join(DEMO, 'photos');
const names = only.length === 0 ? {} : JSON.parse(readFileSync(NAMES, 'utf8'));
if (only.length === 0) rmSync(PHOTOS, { recursive: true, force: true });
mkdirSync(PHOTOS, { recursive: true });
for (const scene of scenes.filter(isWanted)) {
  const bytes = await draw(scene);
  const hash = createHash('sha256').update(bytes).digest('hex');
  if (names[scene.name] && names[scene.name] !== hash) rmSync(join(PHOTOS, `${names[scene.name]}.jpg`), { force: true });
  names[scene.name] = hash;
  writeFileSync(join(PHOTOS, `${hash}.jpg`), bytes);
  console.log(`${scene.name}: ${(bytes.length / 1000).toFixed(0)} kB`);
}
const sorted = Object.fromEntries(Object.entries(names).sort(([a], [b]) => (a < b ? -1 : 1)));
writeFileSync(NAMES, `${JSON.stringify(sorted, null, 2)}\n`);
