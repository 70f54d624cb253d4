import { useState } from 'react';
import type { Side } from '../actions/add-photos.ts';
import { counted } from '../format/number.ts';
import { Pick } from '../ui/pick.tsx';
import { SIDE_WORDS } from './side-words.ts';
import { useSendPhotos } from './use-send-photos.ts';
import { useUnit } from './unit-context.ts';

/** Kinds of pictures that a camera or a folder may offer. */
export const ACCEPTED = 'image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif';
const SIDES = (Object.keys(SIDE_WORDS) as readonly Side[]).map((id) => ({ id, name: SIDE_WORDS[id] }));

/** Takes pictures from the camera or from files, many at once; what is refused is said, the rest is kept. */
export function PhotoAdd() {
  const { file } = useUnit();
  const { sending, send } = useSendPhotos(file.row.id);
  const [side, setSide] = useState<Side>('front');
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
          void send([...(event.target.files ?? [])], side);
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
