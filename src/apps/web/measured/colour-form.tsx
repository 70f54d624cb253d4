import { useState } from 'react';
import { valueWords } from '../../../bench/report/value-words.ts';
import { coloursTest, referenceColour } from '../../../bench/sound-and-picture/index.ts';
import { balanceFrom, colourOf, type Lab, type Patch, type Pixels } from '../../../core/vision/index.ts';
import { recordTest } from '../actions/record-test.ts';
import { useUnit } from '../bench/unit-context.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { photoPixels } from './photo-pixels.ts';
import { PlaceFields } from './place-fields.tsx';
import { TapPicture, type Place } from './tap-picture.tsx';

const TROUBLES = {
  overexposed: 'The grey card is burnt out on the photo. Expose less, and take it again.',
  underexposed: 'The grey card is too dark on the photo. Give it more light, and take it again.',
} as const;
/** Side of the square that a tap takes, share of the width of the photo. */
const PATCH = 0.04;
/** Places of the shell that are measured at most. */
const MOST_PLACES = 6;

/** The colour of the shell beside a grey card, against an unfaded shell of the same model. */
export function ColourForm() {
  const [pixels, setPixels] = useState<Pixels | null>(null);
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [spots, setSpots] = useState(1);
  const [trouble, setTrouble] = useState('');
  const take = async (chosen: File | undefined): Promise<void> => {
    const photo = chosen ? await photoPixels(chosen) : null;
    setTrouble(chosen && !photo ? `${chosen.name} cannot be shown here. Save it as JPEG or PNG, and choose it again.` : '');
    setPixels(photo);
    setPlaces([]);
    setSpots(1);
  };
  const measured = pixels && places.length === spots + 1 ? coloursAt(pixels, places) : null;
  return (
    <div className="form">
      <p className="small">
        Lay a grey card beside the shell, in daylight or under one even lamp, and take both on one photo. Tap the grey card, then a clean
        flat place of the shell. For a report by places (yellowed on one side, say) add more of them.
      </p>
      <Field label="Photo of the shell and a grey card">
        <input type="file" accept="image/*" onChange={(event) => void take(event.target.files?.[0])} />
      </Field>
      {trouble !== '' && (
        <p role="alert" className="trouble">
          {trouble}
        </p>
      )}
      {pixels && (
        <>
          <TapPicture
            pixels={pixels}
            label="The photo with the shell and the grey card"
            onTap={(place) => setPlaces(places.length === spots + 1 ? [place] : [...places, place])}
          >
            {places.map(([x, y], i) => (
              <rect
                key={i}
                className="tap-odd"
                x={x - (PATCH * pixels.width) / 2}
                y={y - (PATCH * pixels.width) / 2}
                width={PATCH * pixels.width}
                height={PATCH * pixels.width}
              />
            ))}
          </TapPicture>
          <PlaceFields
            title="Places on the photo"
            hint="Tap the grey card first, then the shell."
            names={['Grey card', 'Shell', ...Array.from({ length: spots - 1 }, (_, i) => `Shell, place ${i + 2}`)]}
            places={places}
            action="Take these places"
            onTake={setPlaces}
          />
          <button type="button" disabled={spots === MOST_PLACES} onClick={() => setSpots(spots + 1)}>
            One more place of the shell
          </button>
        </>
      )}
      {measured && 'trouble' in measured && (
        <p role="alert" className="trouble">
          {measured.trouble}
        </p>
      )}
      {measured && 'colours' in measured && <ColourResult colours={measured.colours} />}
    </div>
  );
}

function ColourResult({ colours }: { readonly colours: readonly Lab[] }) {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [unfaded, setUnfaded] = useState(false);
  const said = coloursTest(colours, file.colour_reference && referenceColour(file.colour_reference.values), unfaded);
  return (
    <div className="form">
      <p aria-live="polite">{said.text}</p>
      <p className="small muted">{said.values.map(valueWords).join(' · ')}</p>
      <label className="check-line">
        <input type="checkbox" checked={unfaded} onChange={(event) => setUnfaded(event.target.checked)} />
        This shell is unfaded: others of its model are compared with it
      </label>
      <button
        type="button"
        className="main"
        disabled={busy}
        onClick={() => void record(recordTest({ itemId: file.row.id, test: 'colour', said, knownGood: unfaded, minutes: 0 }))}
      >
        Note the colour
      </button>
    </div>
  );
}

function coloursAt(
  pixels: Pixels,
  [card, ...shell]: readonly Place[],
): { readonly colours: readonly Lab[] } | { readonly trouble: string } {
  const balance = balanceFrom(pixels, patchAt(pixels, card!));
  if (!balance.ok) return { trouble: TROUBLES[balance.code] };
  return { colours: shell.map((place) => colourOf(pixels, patchAt(pixels, place), balance)) };
}

/** The square around a place, within the photo. */
function patchAt({ width, height }: Pixels, [x, y]: Place): Patch {
  const half = Math.max(1, Math.round((PATCH * width) / 2));
  const [left, top] = [
    Math.max(0, Math.min(width - 2 * half, Math.round(x) - half)),
    Math.max(0, Math.min(height - 2 * half, Math.round(y) - half)),
  ];
  return { left, top, right: left + 2 * half, bottom: top + 2 * half };
}
