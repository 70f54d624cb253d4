import { createContext, useContext } from 'react';
import type { Gesture } from '../actions/gesture.ts';

export interface RecorderValue {
  /** Stores what the gesture says. True when it is on disk at the bench; false when it was refused (a toast says why). */
  readonly record: (gesture: Gesture) => Promise<boolean>;
  /** The same for a page that takes back by itself what it has written: the ids are known at once, `stored` is as above. */
  readonly recordKnown: (gesture: Gesture) => { readonly ids: readonly string[]; readonly stored: Promise<boolean> };
  /** A plain message in the same corner. */
  readonly tell: (text: string, tone: 'plain' | 'bad') => void;
  /** Something is on its way to the bench. */
  readonly busy: boolean;
}

export const RecorderContext = createContext<RecorderValue | null>(null);

/** The one way in which the pages write. */
export function useRecorder(): RecorderValue {
  const value = useContext(RecorderContext);
  if (value === null) throw new Error('useRecorder belongs inside <Recorder>');
  return value;
}
