import { ask } from './ask.ts';

/** Takes a bundle into this bench, which must be empty; throws `ProblemError` with what is wrong otherwise. */
export const postBundle = (file: Blob): Promise<unknown> =>
  ask<unknown>('/api/bundle', { method: 'POST', headers: { 'content-type': 'application/zip' }, body: file });
