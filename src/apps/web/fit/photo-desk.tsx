import { Field } from '../ui/field.tsx';
import { MarkDesk } from './mark-desk.tsx';
import type { NamedPattern } from './named-pattern.ts';
import { Troubles } from './troubles.tsx';
import { usePhoto } from './use-photo.ts';

interface PhotoDeskProps {
  readonly isPlace: boolean;
  readonly onPattern: (made: NamedPattern) => void;
}

/** Pads measured on a photo whose scale is set by two points. The photo stays on this device. */
export function PhotoDesk({ isPlace, onPattern }: PhotoDeskProps) {
  const { photo, trouble, load } = usePhoto();
  return (
    <div className="form">
      <Field label="Photo, taken straight from above" hint="It stays on this device.">
        <input type="file" accept="image/jpeg,image/png,image/webp" onChange={(event) => load(event.target.files?.[0])} />
      </Field>
      <Troubles troubles={trouble === null ? [] : [trouble]} />
      {photo && <MarkDesk key={photo.url} photo={photo} isPlace={isPlace} onPattern={onPattern} />}
    </div>
  );
}
