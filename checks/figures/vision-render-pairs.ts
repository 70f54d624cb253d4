import type { PartPatch, Pixels } from '../../src/core/vision/index.ts';
import type { PairCase } from './vision-cases.ts';
import { patchesIn, renderedCase, renderedPixels } from './vision-renders.ts';
import type { BoardPlan, PhotoPlan } from './vision-render-set.ts';

/** A drawn suspect against one or several drawn known-good photos, whose parts are known. */
export interface RenderedPair {
  readonly pair: PairCase;
  readonly references: readonly Pixels[];
  readonly parts: readonly PartPatch[];
  readonly plans: { readonly reference: PhotoPlan; readonly other: PhotoPlan };
}

/** The suspect `other` against `references`, the first of which gives the frame. */
export async function renderedPair(references: readonly PhotoPlan[], other: PhotoPlan): Promise<RenderedPair> {
  const reference = references[0]!;
  return {
    pair: await renderedCase(reference, other),
    references: await Promise.all(references.map(renderedPixels)),
    parts: patchesIn(reference),
    plans: { reference, other },
  };
}

/** The pairs of one board that the ranker learns from: guided with one known-good photo and with two, clean, free and scanned. */
export async function* renderedTuningPairs({
  references,
  guided,
  clean,
  free,
  scanReference,
  scans,
}: BoardPlan): AsyncGenerator<RenderedPair> {
  for (const other of [...guided, ...clean]) yield renderedPair([references[0]!], other);
  for (const other of [guided[0]!, ...clean]) yield renderedPair(references, other);
  for (const other of free) yield renderedPair([references[0]!], other);
  for (const other of scans) yield renderedPair([scanReference], other);
}
