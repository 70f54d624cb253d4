import { ask } from './ask.ts';

export type PhotoResult =
  | { readonly name: string; readonly ok: true; readonly photo: { readonly hash: string }; readonly duplicate: boolean }
  | { readonly name: string; readonly ok: false; readonly message: string };

/** Sends pictures as they are; each is taken or refused by itself. */
export async function postPhotos(files: readonly File[]): Promise<readonly PhotoResult[]> {
  const form = new FormData();
  for (const file of files) form.append('photos', file, file.name);
  return (await ask<{ results: PhotoResult[] }>('/api/photos', { method: 'POST', body: form })).results;
}

export const photoUrl = (hash: string, size: 'view' | 'thumb' | 'original'): string => `/photos/${hash}/${size}`;
