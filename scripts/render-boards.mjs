import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';
import { ROOT } from './run.mjs';

const USAGE = `Usage: node scripts/render-boards.mjs FOLDER [tuning|measuring]
Draws the graded set of board photos into FOLDER, and truth.json with each photo's camera, lamps, parts and faults.`;

const [folder, part = 'measuring'] = process.argv.slice(2);
if (!folder || !['tuning', 'measuring'].includes(part)) {
  console.error(USAGE);
  process.exit(2);
}
const load = async (file) => (await runnerImport(join(ROOT, 'checks/figures', file), { logLevel: 'error', configFile: false })).module;
const { renderPlans, photosOf } = await load('vision-render-set.ts');
const { drawRenders, renderedFile, truthOf } = await load('vision-renders.ts');
const plans = renderPlans(part);
if (!(await drawRenders(plans, (sentence) => console.error(sentence)))) {
  console.error('There is no Chromium to draw with: install it, or set SALVOR_CHROMIUM to its path.');
  process.exit(1);
}
mkdirSync(resolve(folder), { recursive: true });
const truth = plans.flatMap(photosOf).map((plan) => {
  const file = `${plan.name.replaceAll(' ', '-').toLowerCase()}.jpg`;
  copyFileSync(renderedFile(plan), join(resolve(folder), file));
  return { file, ...truthOf(plan) };
});
writeFileSync(join(resolve(folder), 'truth.json'), `${JSON.stringify(truth, null, 1)}\n`);
console.log(`${truth.length} photos and their truth are in ${folder}.`);
process.exit();
