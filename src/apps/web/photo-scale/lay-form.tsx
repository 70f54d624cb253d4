import { layingSaid, layingTrouble } from '../../../bench/photo-scale/index.ts';
import type { BoardSide } from '../../../core/vision/index.ts';
import { PlaceFields } from '../measured/place-fields.tsx';
import { Chips } from '../ui/chips.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import type { Laying, LayBy } from './use-laying.ts';

const WAYS: readonly { readonly value: LayBy; readonly label: string }[] = [
  { value: 'model', label: 'By places of the model' },
  { value: 'distance', label: 'By one known distance' },
];
const SIDES: readonly { readonly value: BoardSide; readonly label: string }[] = [
  { value: 'front', label: 'Front' },
  { value: 'back', label: 'Back' },
];

/** What is marked on the photo, and what the marks say together. */
export function LayForm({ laying }: { readonly laying: Laying }) {
  const { by, known, next, marks, place } = laying;
  return (
    <div className="form">
      <Chips legend="How the photo is laid on the board" options={WAYS} value={by} onChange={laying.setBy} />
      {by === 'model' ? (
        <Chips legend="Side that is seen" options={SIDES} value={laying.side} onChange={laying.setSide} />
      ) : (
        <NumberField label="Their distance, mm" value={laying.apartMm} min={1} step="any" onChange={laying.setApartMm} />
      )}
      {by === 'model' && known.length === 0 && (
        <p>The model places nothing on this side yet. Lay the photo by one known distance, such as a ruler beside the board.</p>
      )}
      {known.length > 0 && <Pick label="A tap marks" options={known} value={next?.id ?? ''} onChange={laying.setNext} />}
      <MarkList laying={laying} />
      <PlaceFields
        title="Places on the photo"
        hint={`Tap ${known
          .slice(0, 4)
          .map(({ name }) => name)
          .join(', ')}.`}
        names={known.slice(0, by === 'model' ? 4 : 2).map(({ name }) => name)}
        places={known.slice(0, 4).flatMap(({ name }) => marks.filter((mark) => mark.name === name).map(({ photoPx }) => photoPx))}
        action="Take these places"
        onTake={laying.take}
      />
      <output>{place.ok ? layingSaid(place) : layingTrouble(place)}</output>
    </div>
  );
}

function MarkList({ laying: { marks, place, remove } }: { readonly laying: Laying }) {
  if (marks.length === 0) return null;
  const offOf = (name: string): string => {
    const off = place.ok && place.spreadMm !== null ? place.residuals.find((each) => each.name === name) : undefined;
    return off ? `, ${off.mm.toFixed(2)} mm off` : '';
  };
  return (
    <ul className="plain-list">
      {marks.map(({ name }) => (
        <li key={name} className="row">
          <span>
            {name}
            {offOf(name)}
          </span>
          <button type="button" className="quiet" aria-label={`Take away: ${name}`} onClick={() => remove(name)}>
            Take away
          </button>
        </li>
      ))}
    </ul>
  );
}
