import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { screwMat } from '../../src/bench/hands/index.ts';
import type { ModelFile } from '../../src/bench/models/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { openPrinter } from '../../src/edges/print/index.ts';
import { measureMat } from './measure-mat.ts';
import { rasterise } from './raster.ts';

/** No whole number, so that lines fall between pixels. */
const PX_PER_MM = 9.7;
let files: ReadonlyMap<string, ModelFile>;
beforeAll(async () => {
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  files = new Map([...models].map(([id, { file }]) => [id, file]));
});

describe('the mat on paper', () => {
  it.each([
    ['tern-tn20', 'A4'],
    ['tern-tn20', 'Letter'],
    ['corrie-cp4', 'A4'],
    ['corrie-cp4', 'Letter'],
  ] as const)('of %s on %s is true to 0.2 mm', async (model, paper) => {
    const mat = screwMat(files.get(model)!, paper);
    if (!mat.ok) throw new Error(mat.code);
    const rasters = await rasterise(await openPrinter().mat(mat), PX_PER_MM);
    expect(rasters).toHaveLength(mat.pages.length);
    const { mm, distances } = measureMat(mat, rasters, PX_PER_MM);
    expect(mm).toBeLessThanOrEqual(0.2);
    expect(distances).toBeGreaterThan(20);
  });

  it('is found to be wrong when it was printed 0.4 % too small', async () => {
    const mat = screwMat(files.get('tern-tn20')!, 'A4');
    if (!mat.ok) throw new Error(mat.code);
    const rasters = await rasterise(await openPrinter().mat(mat), PX_PER_MM);
    expect(measureMat(mat, rasters, PX_PER_MM * 1.004).mm).toBeGreaterThan(0.35);
  });
});
