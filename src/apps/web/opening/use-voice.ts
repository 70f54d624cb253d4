import { useEffect, useRef, useState } from 'react';

/** What of the browser's voice recognition is used; it has no type in the library of the language. */
interface Recognition extends EventTarget {
  lang: string;
  continuous: boolean;
  start(): void;
  abort(): void;
}

interface Heard extends Event {
  readonly resultIndex: number;
  readonly results: ArrayLike<ArrayLike<{ readonly transcript: string }>>;
}

export type Command = 'done' | 'stop';

export interface Voice {
  /** Whether this browser can listen at all. */
  readonly exists: boolean;
  readonly isOn: boolean;
  /** Why it fell silent; empty while it did not. */
  readonly trouble: string;
  turnOn(): void;
  turnOff(): void;
}

/** The last command in what was said; null where there is none. */
export function commandIn(said: string): Command | null {
  const found = said
    .toLowerCase()
    .match(/\b(?:done|next|stop)\b/g)
    ?.at(-1);
  if (found === undefined) return null;
  return found === 'stop' ? 'stop' : 'done';
}

/** Ticks by voice, off until the person turns it on, and off again when the page is left: the browser may send what it hears elsewhere. */
export function useVoice(onDone: () => void): Voice {
  const [isOn, setOn] = useState(false);
  const [trouble, setTrouble] = useState('');
  const done = useRef(onDone);
  useEffect(() => {
    done.current = onDone;
  });
  const make = recognitionMaker();
  useEffect(() => {
    if (!isOn || !make) return;
    return listen(
      new make(),
      (command) => (command === 'stop' ? setOn(false) : done.current()),
      (why) => {
        setTrouble(why);
        setOn(false);
      },
    );
  }, [isOn, make]);
  const turnOn = (): void => {
    setTrouble('');
    setOn(true);
  };
  return { exists: make !== undefined, isOn, trouble, turnOn, turnOff: () => setOn(false) };
}

/** Listens until told to end; a recogniser that ends by itself after a silence is started again. */
function listen(recognition: Recognition, hear: (command: Command) => void, fail: (why: string) => void): () => void {
  let isOver = false;
  recognition.lang = 'en';
  recognition.continuous = true;
  recognition.addEventListener('result', (event) => {
    const { resultIndex, results } = event as Heard;
    const command = commandIn(results[resultIndex]?.[0]?.transcript ?? '');
    if (command && !isOver) hear(command);
  });
  recognition.addEventListener('error', (event) => {
    const { error } = event as Event & { readonly error: string };
    if (error === 'no-speech' || isOver) return;
    isOver = true;
    fail(TROUBLES[error] ?? `The browser stopped listening (${error}). Use the button.`);
  });
  recognition.addEventListener('end', () => {
    if (!isOver) recognition.start();
  });
  recognition.start();
  return () => {
    isOver = true;
    recognition.abort();
  };
}

const TROUBLES: Readonly<Record<string, string>> = {
  'not-allowed': 'The browser may not use the microphone. Allow it for this page, or use the button.',
  network: 'The voice service of the browser is not reached. Use the button.',
};

function recognitionMaker(): (new () => Recognition) | undefined {
  const has = globalThis as unknown as Partial<Record<'SpeechRecognition' | 'webkitSpeechRecognition', new () => Recognition>>;
  return has.SpeechRecognition ?? has.webkitSpeechRecognition;
}
