import { displayRefusalWords, displayTest } from '../../../bench/sound-and-picture/index.ts';
import { SHOWN, type Shown } from '../../../core/vision/index.ts';
import { recordTest } from '../actions/record-test.ts';
import { useUnit } from '../bench/unit-context.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { DisplayMarks } from './display-marks.tsx';
import { PlaceFields } from './place-fields.tsx';
import { TapPicture } from './tap-picture.tsx';
import { useDisplayPhotos } from './use-display-photos.ts';

const COLOURS = SHOWN.map((id) => ({ id, name: id[0]!.toUpperCase() + id.slice(1) }));
const CORNERS = ['Upper left', 'Upper right', 'Lower right', 'Lower left'] as const;

type Photos = ReturnType<typeof useDisplayPhotos>;

/** Photos of the display showing one colour each: dead dots, lines, stains and uneven light. */
export function DisplayForm() {
  const photos = useDisplayPhotos();
  const { shows, setShows, dots, setDots, trouble, answer } = photos;
  return (
    <div className="form">
      <p className="small">
        Let the display show one colour all over, switch the lights off, keep the camera straight in front and the display as large as it
        goes. White first, then black from the same place, then colours.
      </p>
      <div className="fields">
        <Pick label="It shows" options={COLOURS} value={shows} onChange={(id) => setShows(id as Shown)} />
        <Field label="Dots across" hint="Leave empty where they are not known: then specks are counted">
          <input type="text" inputMode="numeric" value={dots[0]} onChange={(event) => setDots([event.target.value, dots[1]])} />
        </Field>
        <Field label="Dots down">
          <input type="text" inputMode="numeric" value={dots[1]} onChange={(event) => setDots([dots[0], event.target.value])} />
        </Field>
      </div>
      <Field label="Photo of the display">
        <input key={photos.round} type="file" accept="image/*" onChange={(event) => void photos.take(event.target.files?.[0])} />
      </Field>
      <Photo photos={photos} />
      {(trouble !== '' || answer?.ok === false) && (
        <p role="alert" className="trouble">
          {answer?.ok === false ? displayRefusalWords(answer.code) : trouble}
        </p>
      )}
      <Found photos={photos} />
    </div>
  );
}

/** The photo with the corners of the display, to be put right by a tap or in numbers. */
function Photo({ photos: { pixels, corners, found, tap, judge } }: { readonly photos: Photos }) {
  if (!pixels) return null;
  return (
    <>
      <TapPicture pixels={pixels} label="The photo of the display, with its corners" onTap={tap}>
        <DisplayMarks widthPx={pixels.width} corners={corners} found={found} />
      </TapPicture>
      <PlaceFields
        title="Corners of the display"
        hint="Tap the four corners on the photo, upper left first, then clockwise."
        names={CORNERS}
        places={corners}
        action="Take these corners"
        onTake={(at) => judge(pixels, at)}
      />
    </>
  );
}

/** What the photos show together, and the button that notes it. */
function Found({ photos: { photos, found, another } }: { readonly photos: Photos }) {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  if (photos.length === 0) return null;
  const said = displayTest(photos);
  return (
    <>
      <p aria-live="polite">{said.text}</p>
      <div className="row">
        {found && (
          <button type="button" onClick={another}>
            Another colour, too
          </button>
        )}
        <button
          type="button"
          className="main"
          disabled={busy}
          onClick={() => void record(recordTest({ itemId: file.row.id, test: 'display', said, minutes: 0 }))}
        >
          Note the display check
        </button>
      </div>
    </>
  );
}
