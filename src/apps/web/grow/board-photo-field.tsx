import { useState } from 'react';
import { photoUrl, postPhotos } from '../api/post-photos.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { useRecorder } from '../record/recorder-context.ts';

interface BoardPhotoFieldProps {
  readonly label: string;
  /** Hash of the photo that the bench keeps; null before there is one. */
  readonly photo: string | null;
  readonly onChange: (photo: string) => void;
}

/** A photo of one side of a board, from a file or the camera; the bench keeps it at once. */
export function BoardPhotoField({ label, photo, onChange }: BoardPhotoFieldProps) {
  const { tell } = useRecorder();
  const [sending, setSending] = useState(false);
  const send = async (file: File): Promise<void> => {
    setSending(true);
    try {
      const [result] = await postPhotos([file]);
      if (result?.ok) onChange(result.photo.hash);
      else if (result) tell(`${result.name}: ${result.message}`, 'bad');
    } catch (error) {
      tell(`Not sent: ${sentenceOf(error)}`, 'bad');
    } finally {
      setSending(false);
    }
  };
  return (
    <div className="board-photo">
      {photo !== null && <img src={photoUrl(photo, 'thumb')} alt={`${label}, as it was added`} />}
      <label className="button file-button">
        {photo === null ? `Add: ${label}` : `Another one: ${label}`}
        <input
          type="file"
          className="sr-only"
          accept="image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif"
          disabled={sending}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) void send(file);
            event.target.value = '';
          }}
        />
      </label>
      <output>{sending && 'Sending …'}</output>
    </div>
  );
}
