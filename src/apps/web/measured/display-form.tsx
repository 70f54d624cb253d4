import { useState } from 'react';
import { displayRefusalWords, displayTest, type DisplayPhoto } from '../../../bench/sound-and-picture/index.ts';
import { checkDisplay, SHOWN, type DisplayAnswer, type Pixels, type Quad, type Shown } from '../../../core/vision/index.ts';
import { recordTest } from '../actions/record-test.ts';
import { useUnit } from '../bench/unit-context.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { CornerFields } from './corner-fields.tsx';
import { DisplayPicture, type Corner } from './display-picture.tsx';
import { photoPixels } from './photo-pixels.ts';

const COLOURS = SHOWN.map((id) => ({ id, name: id[0]!.toUpperCase() + id.slice(1) }));

/** Photos of the display showing one colour each: dead dots, lines, stains and uneven light. */
export function DisplayForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [shows, setShows] = useState<Shown>('white');
  const [dots, setDots] = useState(['', '']);
  const [pixels, setPixels] = useState<Pixels | null>(null);
  const [corners, setCorners] = useState<readonly Corner[]>([]);
  const [answer, setAnswer] = useState<DisplayAnswer | null>(null);
  const [kept, setKept] = useState<readonly DisplayPhoto[]>([]);
  const [trouble, setTrouble] = useState('');
  const judge = (photo: Pixels, at: readonly Corner[]): void => {
    const counted = dots.map(Number);
    const found = checkDisplay(photo, {
      shows,
      ...(at.length === 4 ? { corners: at as unknown as Quad } : {}),
      ...(counted.every((count) => count >= 8) ? { dots: [Math.round(counted[0]!), Math.round(counted[1]!)] as const } : {}),
    });
    setAnswer(found);
    if (found.ok) setCorners(found.corners);
  };
  const take = async (chosen: File | undefined): Promise<void> => {
    const photo = chosen ? await photoPixels(chosen) : null;
    setTrouble(chosen && !photo ? `${chosen.name} cannot be shown here. Save it as JPEG or PNG, and choose it again.` : '');
    setPixels(photo);
    setAnswer(null);
    if (!photo) return;
    // On black nothing shows where the display is: the corners of the photo before stay, as from the same pose.
    const before = shows === 'black' ? corners : [];
    setCorners(before);
    judge(photo, before);
  };
  const addCorner = (corner: Corner): void => {
    const next = corners.length === 4 ? [corner] : [...corners, corner];
    setCorners(next);
    if (pixels && next.length === 4) judge(pixels, next);
  };
  const all = answer?.ok ? [...kept, { shows, found: answer }] : kept;
  const said = all.length > 0 ? displayTest(all) : null;
  const next = (): void => {
    setKept(all);
    setAnswer(null);
    setPixels(null);
  };
  return (
    <div className="form">
      <p className="small">
        Let the display show one colour all over, switch the lights off, keep the camera straight in front and the display as large as it
        goes. White first, then black from the same place, then colours.
      </p>
      <div className="fields">
        <Pick label="It shows" options={COLOURS} value={shows} onChange={(id) => setShows(id as Shown)} />
        <Field label="Dots across" hint="Leave empty where they are not known: then specks are counted">
          <input type="text" inputMode="numeric" value={dots[0]} onChange={(event) => setDots([event.target.value, dots[1]!])} />
        </Field>
        <Field label="Dots down">
          <input type="text" inputMode="numeric" value={dots[1]} onChange={(event) => setDots([dots[0]!, event.target.value])} />
        </Field>
      </div>
      <Field label="Photo of the display">
        <input key={kept.length} type="file" accept="image/*" onChange={(event) => void take(event.target.files?.[0])} />
      </Field>
      {trouble !== '' && (
        <p role="alert" className="trouble">
          {trouble}
        </p>
      )}
      {pixels && (
        <>
          <DisplayPicture pixels={pixels} corners={corners} found={answer?.ok ? answer : null} onCorner={addCorner} />
          <CornerFields corners={corners} onJudge={(at) => judge(pixels, at)} />
        </>
      )}
      {answer && !answer.ok && (
        <p role="alert" className="trouble">
          {displayRefusalWords(answer.code)}
        </p>
      )}
      {said && (
        <>
          <p aria-live="polite">{said.text}</p>
          <div className="row">
            {answer?.ok && (
              <button type="button" onClick={next}>
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
      )}
    </div>
  );
}
