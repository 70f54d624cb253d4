import { layoutMat, type Mat, type Paper } from '../../core/teardown/index.ts';
import type { ModelFile } from '../models/index.ts';

/** The mat of a model's fasteners, for the screen and for print. A model without fasteners has a mat with rulers only. */
export const screwMat = (file: ModelFile, paper: Paper): Mat =>
  layoutMat(
    `Screws of: ${file.name}`,
    file.panels.map(({ id, name, width_mm, height_mm }) => ({ id, name, widthMm: width_mm, heightMm: height_mm })),
    file.fasteners.map((each) => ({
      id: each.id,
      name: each.name,
      drive: each.drive,
      lengthMm: each.length_mm,
      count: each.count,
      panel: each.panel ?? '',
      places: each.at,
    })),
    paper,
  );
