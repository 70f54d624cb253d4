import type { Figure, Progress } from './figure.ts';
import { boardFigures } from './vision-boards.ts';
import { hasBoards, hasDeepPcb } from './vision-cases.ts';
import { deepPcbFigures, turnedFigures } from './vision-deeppcb.ts';
import { partFigures } from './vision-parts.ts';
import { renderFigures } from './vision-render-figures.ts';
import { speedFigures } from './vision-speed.ts';
import { openPictureLibrary } from '../../src/edges/photos/picture-library.ts';

/**
 * The figures of vision on published pictures, which are read where they lie, and on boards that are drawn: a set that is absent is said and left out. What the rankers
 * learned from is never measured on.
 */
export async function measure(progress: Progress): Promise<Figure[]> {
  const library = await openPictureLibrary();
  const figures: Figure[] = [];
  if (hasDeepPcb()) figures.push(...(await deepPcbFigures(library, progress)), ...(await turnedFigures(library, progress)));
  else progress('The pairs of DeepPCB are not beside the project: their figures are left out.');
  if (hasBoards())
    figures.push(...(await boardFigures(library, progress)), ...(await partFigures(library, progress)), ...(await speedFigures(progress)));
  else progress('The photographs of boards are not beside the project: their figures are left out.');
  figures.push(...(await renderFigures(library, progress)));
  return figures;
}
