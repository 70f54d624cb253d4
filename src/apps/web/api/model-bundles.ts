import type { ModelBundle } from '../../../bench/events/index.ts';
import { ask } from './ask.ts';

/** Looks into a bundle; its photos are kept by the bench from then on. */
export const lookIntoBundle = async (file: File): Promise<ModelBundle> =>
  (
    await ask<{ bundle: ModelBundle }>('/api/model-bundle', {
      method: 'POST',
      headers: { 'content-type': 'application/zip' },
      body: file,
    })
  ).bundle;

/** Where the bundle of a model is fetched. */
export const bundleUrl = (modelId: string, author: string, licence: string): string =>
  `/api/models/${encodeURIComponent(modelId)}/bundle?${new URLSearchParams({ author, licence }).toString()}`;
