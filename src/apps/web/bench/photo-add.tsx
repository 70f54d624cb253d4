import { useState } from 'react';
import { addPhotos, type Side } from '../actions/add-photos.ts';
import { postPhotos } from '../api/post-photos.ts';
import { ProblemError, sentenceOf } from '../api/problem-error.ts';
import { photoParcels } from '../offline/photo-parcels.ts';
import { outbox } from '../offline/outbox-here.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Pick } from '../ui/pick.tsx';
import { SIDE_WORDS } from './side-words.ts';
import { useUnit } from './unit-context.ts';

const ACCEPTED = 'image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif';
const SIDES = (Object.keys(SIDE_WORDS) as readonly Side[]).map((id) => ({ id, name: SIDE_WORDS[id] }));

/** Takes pictures from the camera or from files, many at once; what is refused is said, the rest is kept. */
export function PhotoAdd() {
  const { file } = useUnit();
  const { record, tell } = useRecorder();
  const [side, setSide] = useState<Side>('front');
  const [sending, setSending] = useState(0);
  const keep = async (files: readonly File[]): Promise<void> => {
    const { parcels, hashes } = await photoParcels(files);
    await outbox.keep(parcels);
    await record(addPhotos(file.row.id, hashes, side));
  };
  const send = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    setSending(files.length);
    try {
      if (outbox.state().waiting.length > 0) return await keep(files);
      const results = await postPhotos(files);
      for (const result of results) if (!result.ok) tell(`${result.name}: ${result.message}`, 'bad');
      const hashes = results.flatMap((result) => (result.ok ? [result.photo.hash] : []));
      if (hashes.length > 0) await record(addPhotos(file.row.id, [...new Set(hashes)], side));
    } catch (error) {
      const isAway = error instanceof ProblemError && error.code === 'unreachable';
      if (
        isAway &&
        (await keep(files).then(
          () => true,
          () => false,
        ))
      )
        return;
      tell(`Not sent: ${sentenceOf(error)}`, 'bad');
    } finally {
      setSending(0);
    }
  };
  const input = (label: string, camera: boolean) => (
    <label className="button file-button">
      {label}
      <input
        type="file"
        className="sr-only"
        accept={ACCEPTED}
        disabled={sending > 0}
        {...(camera ? { capture: 'environment' as const } : { multiple: true })}
        onChange={(event) => {
          void send([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
    </label>
  );
  return (
    <div className="form">
      <Pick label="What they show" options={SIDES} value={side} onChange={(id) => setSide(id as Side)} />
      <div className="row">
        {input('Add photos', false)}
        <span className="camera-only">{input('Take a photo', true)}</span>
        <output>{sending > 0 && `Sending ${counted(sending, 'photo')} …`}</output>
      </div>
    </div>
  );
}
