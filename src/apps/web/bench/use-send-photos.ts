import { useState } from 'react';
import { addPhotos, type Side } from '../actions/add-photos.ts';
import { postPhotos } from '../api/post-photos.ts';
import { ProblemError, sentenceOf } from '../api/problem-error.ts';
import { outbox } from '../offline/outbox-here.ts';
import { photoParcels } from '../offline/photo-parcels.ts';
import { useRecorder } from '../record/recorder-context.ts';

export interface SendPhotos {
  /** How many are on their way. */
  readonly sending: number;
  /** True once they are on the bench, or kept here until it answers. What is refused is said, the rest is kept. */
  readonly send: (files: readonly File[], side: Side) => Promise<boolean>;
}

/** Hangs pictures on a unit; with the bench away they stay on this device until it is back. */
export function useSendPhotos(itemId: string): SendPhotos {
  const { record, tell } = useRecorder();
  const [sending, setSending] = useState(0);
  const keep = async (files: readonly File[], side: Side): Promise<boolean> => {
    const { parcels, hashes } = await photoParcels(files);
    await outbox.keep(parcels);
    return record(addPhotos(itemId, hashes, side));
  };
  const post = async (files: readonly File[], side: Side): Promise<boolean> => {
    const results = await postPhotos(files);
    for (const result of results) if (!result.ok) tell(`${result.name}: ${result.message}`, 'bad');
    const hashes = results.flatMap((result) => (result.ok ? [result.photo.hash] : []));
    return hashes.length > 0 && record(addPhotos(itemId, [...new Set(hashes)], side));
  };
  const send = async (files: readonly File[], side: Side): Promise<boolean> => {
    if (files.length === 0) return false;
    setSending(files.length);
    try {
      return await (outbox.state().waiting.length > 0 ? keep(files, side) : post(files, side));
    } catch (error) {
      const isAway = error instanceof ProblemError && error.code === 'unreachable';
      const kept = isAway ? await keep(files, side).catch(() => null) : null;
      if (kept === null) tell(`Not sent: ${sentenceOf(error)}`, 'bad');
      return kept ?? false;
    } finally {
      setSending(0);
    }
  };
  return { sending, send };
}
