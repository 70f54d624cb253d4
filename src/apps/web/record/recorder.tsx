import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useMemo, useRef, useState, type ReactNode } from 'react';
import { v7 } from 'uuid';
import type { Gesture } from '../actions/gesture.ts';
import { stamp, type StampedEvent } from '../actions/stamp.ts';
import { undo } from '../actions/undo.ts';
import { askAnew } from '../api/ask-anew.ts';
import { postEvents } from '../api/post-events.ts';
import { ProblemError, sentenceOf } from '../api/problem-error.ts';
import { sawUpTo, whileWriting } from '../api/seen-seq.ts';
import { outbox } from '../offline/outbox-here.ts';
import { deviceName } from './device.ts';
import { RecorderContext } from './recorder-context.ts';
import { Toasts, type Toast } from './toasts.tsx';

/** What went wrong and was not put away yet, at most so many. */
const BAD_AT_ONCE = 3;

const stampNow = (gesture: Gesture): StampedEvent[] =>
  stamp(gesture.drafts, { newId: () => v7(), now: () => new Date(), device: deviceName() });

/** Sends gestures to the bench, and shows what became of each: "Noted … Undo", or why not, with a retry of the very same events. */
export function Recorder({ children }: { readonly children: ReactNode }) {
  const client = useQueryClient();
  const [toasts, setToasts] = useState<readonly Toast[]>([]);
  const [pending, setPending] = useState(0);
  const nextToast = useRef(1);

  const show = useCallback((toast: Omit<Toast, 'id'>) => {
    const id = nextToast.current++;
    setToasts((now) => [...now.filter((each) => each.tone === 'bad').slice(-BAD_AT_ONCE), { ...toast, id }]);
  }, []);
  const dismiss = useCallback((id: number) => setToasts((now) => now.filter((toast) => toast.id !== id)), []);

  const send = useCallback(
    async function sendEvents(events: readonly StampedEvent[], said: string, undoable: boolean): Promise<boolean> {
      setPending((count) => count + 1);
      const keep = async (): Promise<boolean> => {
        await outbox.keep([{ said, content: { what: 'events', events } }]);
        show({ text: `Kept on this device until the bench answers: ${said}`, tone: 'plain' });
        return true;
      };
      try {
        // What was noted before goes first.
        if (outbox.state().waiting.length > 0) return await keep();
        await whileWriting(async () => {
          const { stored } = await postEvents(events);
          sawUpTo(Math.max(...stored.map((each) => each.seq), 0));
        });
        const takeBack = () => void sendEvents(stampNow(undo(events.map((event) => event.id))), 'taken back', false);
        show({ text: `Noted: ${said}`, tone: 'plain', ...(undoable ? { action: { label: 'Undo', run: takeBack } } : {}) });
        await askAnew(client);
        return true;
      } catch (error) {
        if (error instanceof ProblemError && error.code === 'unreachable') {
          const kept = await keep().catch(() => false);
          if (kept) return true;
        }
        const again = { label: 'Try again', run: () => void sendEvents(events, said, undoable) };
        const retriable = error instanceof ProblemError && error.retriable;
        show({ text: `Not noted: ${sentenceOf(error)}`, tone: 'bad', ...(retriable ? { action: again } : {}) });
        return false;
      } finally {
        setPending((count) => count - 1);
      }
    },
    [client, show],
  );

  const value = useMemo(
    () => ({
      record: (gesture: Gesture) =>
        send(
          stampNow(gesture),
          gesture.said,
          gesture.drafts.every((draft) => draft.kind !== 'correction'),
        ),
      recordKnown: (gesture: Gesture) => {
        const events = stampNow(gesture);
        return { ids: events.map(({ id }) => id), stored: send(events, gesture.said, false) };
      },
      tell: (text: string, tone: 'plain' | 'bad') => show({ text, tone }),
      busy: pending > 0,
    }),
    [send, show, pending],
  );
  return (
    <RecorderContext value={value}>
      {children}
      <Toasts toasts={toasts} dismiss={dismiss} />
    </RecorderContext>
  );
}
