import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { screwMat } from '../../src/bench/hands/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import type { PrintedMat } from '../../src/bench/ports.ts';
import { measureMat } from '../print/measure-mat.ts';
import { rasterise } from '../print/raster.ts';
import { round, type Figure, type Progress } from './figure.ts';

/** No whole number, so that lines fall between pixels. */
const PX_PER_MM = 17.3;

/** How true the mats of the shipped models are, on both papers. */
export async function matFigures(progress: Progress): Promise<Figure[]> {
  progress('Printing the mats of the models, and measuring their pictures …');
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  let [mm, distances, sheets] = [0, 0, 0];
  for (const { file } of models.values())
    for (const paper of ['A4', 'Letter'] as const) {
      const mat = screwMat(file, paper);
      if (!mat.ok) throw new Error(`${file.id}: ${mat.code}`);
      const error = measureMat(mat, await rasterise(printed(mat), PX_PER_MM), PX_PER_MM);
      mm = Math.max(mm, error.mm);
      distances += error.distances;
      sheets += mat.pages.length;
    }
  const reference = `largest error of ${distances} distances on ${sheets} sheets, A4 and Letter: rulers against 100 mm, screws against each other; PDF drawn by pdf.js at ${PX_PER_MM} px/mm`;
  return [{ figure: 'hands.mat_error_mm', value: round(mm), unit: 'mm', target: '≤ 0.2', reference }];
}

/** The sheet as the built program prints it. */
function printed(mat: PrintedMat): Uint8Array {
  const script = join(process.cwd(), 'checks/figures/print-mat.mjs');
  return new Uint8Array(execFileSync(process.execPath, [script], { input: JSON.stringify(mat), maxBuffer: 2 ** 26 }));
}
