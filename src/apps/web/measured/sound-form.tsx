import { useState } from 'react';
import { referenceTone, soundTest } from '../../../bench/sound-and-picture/index.ts';
import { valueWords } from '../../../bench/report/value-words.ts';
import { measureTone, readWav, type Tone } from '../../../core/rework/index.ts';
import { recordTest } from '../actions/record-test.ts';
import { useUnit } from '../bench/unit-context.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { playSweep, playTone } from './play-sound.ts';
import { recordSound, type Recorded, type Sound } from './record-sound.ts';

const TROUBLES = {
  silence: 'Nothing is to be heard. Go nearer, play the tone louder, and record again.',
  'no-single-tone': 'There is no one steady tone. Let the unit play one tone, keep still, and record again.',
  'not-a-wav': 'This is no WAV file. Save the recording as WAV (PCM), and choose it again.',
  'unsupported-samples': 'Samples of this kind cannot be read. Save it as WAV with 16 or 24 bits.',
  'no-samples': 'The file holds no sound. Record it again.',
  'too-short': 'The recording is too short. Half a second of a steady tone is enough.',
} as const;

type Heard = { readonly tone: Tone } | { readonly trouble: string };

/** Level, frequency and distortion of a tone that the unit plays, against the reference unit of its model. */
export function SoundForm() {
  const [heard, setHeard] = useState<Heard | null>(null);
  const [listening, setListening] = useState(false);
  const listen = async (): Promise<void> => {
    setListening(true);
    setHeard(await heardIn(recordSound()));
    setListening(false);
  };
  return (
    <div className="form">
      <p className="small">
        Let the unit play one steady tone, best near 1 kHz, at a setting and a distance that you keep for every unit of this model. To
        listen for rattles and holes, play the sweep here and the same on the unit, and compare.
      </p>
      <div className="row">
        <button type="button" onClick={() => playSweep(100, 8000, 8)}>
          Play a sweep here
        </button>
        <button type="button" onClick={() => playTone(1000, 3)}>
          Play 1 kHz here
        </button>
      </div>
      <div className="row">
        <button type="button" className="main" disabled={listening} onClick={() => void listen()}>
          {listening ? 'Listening …' : 'Listen by the microphone'}
        </button>
      </div>
      <Field label="Or a recording (WAV)">
        <input type="file" accept=".wav,audio/wav,audio/x-wav" onChange={(event) => void wavOf(event.target.files?.[0]).then(setHeard)} />
      </Field>
      {heard && 'trouble' in heard && (
        <p role="alert" className="trouble">
          {heard.trouble}
        </p>
      )}
      {heard && 'tone' in heard && <SoundResult tone={heard.tone} />}
    </div>
  );
}

function SoundResult({ tone }: { readonly tone: Tone }) {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [knownGood, setKnownGood] = useState(false);
  const reference = file.sound_reference && referenceTone(file.sound_reference.values);
  const said = soundTest(tone, reference, knownGood);
  return (
    <div className="form">
      <p aria-live="polite">{said.text}</p>
      <ul className="lines" aria-label="Measured">
        {said.values.map((value) => (
          <li key={value.name}>{valueWords(value)}</li>
        ))}
      </ul>
      <label className="check-line">
        <input type="checkbox" checked={knownGood} onChange={(event) => setKnownGood(event.target.checked)} />
        This unit is known to be well: others of its model are compared with it
      </label>
      <button
        type="button"
        className="main"
        disabled={busy}
        onClick={() => void record(recordTest({ itemId: file.row.id, test: 'sound', said, knownGood, minutes: 0 }))}
      >
        Note the sound check
      </button>
    </div>
  );
}

async function wavOf(file: File | undefined): Promise<Heard | null> {
  if (!file) return null;
  const wav = readWav(new Uint8Array(await file.arrayBuffer()));
  return wav.ok ? toneIn({ samples: wav.channels[0]!, sampleRate: wav.sampleRate }) : { trouble: TROUBLES[wav.code] };
}

async function heardIn(recording: Promise<Recorded>): Promise<Heard> {
  const recorded = await recording;
  return recorded.ok ? toneIn(recorded.sound) : { trouble: recorded.message };
}

const LEAST_SAMPLES = 4096;

function toneIn({ samples, sampleRate }: Sound): Heard {
  if (samples.length < LEAST_SAMPLES) return { trouble: TROUBLES['too-short'] };
  const measured = measureTone(samples, sampleRate);
  return measured.ok ? { tone: measured.tone } : { trouble: TROUBLES[measured.code] };
}
