import { useEffect, useRef, useState } from 'react';
import { markParts } from '../actions/mark-parts.ts';
import { undo } from '../actions/undo.ts';
import { seenUpTo } from '../api/seen-seq.ts';
import { outbox } from '../offline/outbox-here.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { areSame, stepBetween } from './editor-steps.ts';
import { beginEditor, type Editor } from './editor.ts';
import type { EditorPart } from './editor-part.ts';

interface StoredParts {
  readonly parts: readonly EditorPart[];
  /** How far into the log they reach. */
  readonly seq: number;
}

/**
 * The editor of a board whose every step is stored at once: a new step as its events, a step taken back as corrections of them. What another device
 * changes meanwhile is taken over as soon as nothing of this page is on its way; the steps of this page can then no longer be taken back.
 */
export function useBoardEditor(
  modelId: string,
  { parts, seq }: StoredParts,
): { readonly editor: Editor; readonly change: (next: Editor) => void } {
  const { recordKnown } = useRecorder();
  const [editor, setEditor] = useState<Editor>(() => beginEditor(parts));
  const [onItsWay, setOnItsWay] = useState(0);
  const events = useRef(new Map<number, readonly string[]>());

  useEffect(() => {
    if (onItsWay > 0 || seq < seenUpTo() || outbox.state().waiting.length > 0 || areSame(parts, editor.parts)) return;
    events.current.clear();
    setEditor((now) => ({
      ...beginEditor(parts, now.side),
      brush: now.brush,
      recent: now.recent,
      clipboard: now.clipboard,
      nextChange: now.nextChange,
    }));
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- what this page itself changes is not compared before it is stored
  }, [parts, seq, onItsWay]);

  const send = (stored: Promise<boolean>): void => {
    setOnItsWay((count) => count + 1);
    void stored.finally(() => setOnItsWay((count) => count - 1));
  };
  const change = (next: Editor): void => {
    const { done, takenBack } = stepBetween(editor, next);
    if (done) {
      const { ids, stored } = recordKnown(markParts(modelId, done));
      events.current.set(done.id, ids);
      send(stored);
    }
    const ids = takenBack && events.current.get(takenBack.id);
    if (ids) send(recordKnown(undo(ids)).stored);
    setEditor(next);
  };
  return { editor, change };
}
