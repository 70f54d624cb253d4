import { useState } from 'react';
import { sentenceOf } from '../api/problem-error.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import type { Editor } from './editor.ts';
import { findGhosts } from './find-ghosts.ts';
import { acceptedAll, isLikeInHand, uncovered, type Ghost } from './ghosts.ts';
import type { LaidPhoto } from './lay-photos.ts';

interface GhostBarProps {
  readonly hash: string;
  readonly laid: LaidPhoto;
  readonly board: { readonly width_mm: number; readonly height_mm: number };
  readonly editor: Editor;
  readonly ghosts: readonly Ghost[];
  readonly onGhosts: (ghosts: readonly Ghost[]) => void;
  readonly onChange: (editor: Editor) => void;
}

/** Asks the photo what stands on it, and takes or waves away what it proposes, many at once. Nothing is believed before it is accepted. */
export function GhostBar({ hash, laid, board, editor, ghosts, onGhosts, onChange }: GhostBarProps) {
  const { tell } = useRecorder();
  const [asking, setAsking] = useState(false);
  const here = ghosts.filter(({ side }) => side === editor.side);
  const ask = async (): Promise<void> => {
    setAsking(true);
    try {
      const found = uncovered(await findGhosts(hash, laid, board), editor);
      onGhosts([...ghosts.filter(({ side }) => side !== laid.lies.side), ...found]);
      if (found.length === 0) tell('The photo proposes nothing that is not marked yet.', 'plain');
    } catch (error) {
      tell(`Not looked at: ${sentenceOf(error)}`, 'bad');
    } finally {
      setAsking(false);
    }
  };
  const take = (taken: readonly Ghost[]): void => {
    onChange(acceptedAll(editor, taken));
    onGhosts(ghosts.filter((ghost) => !taken.includes(ghost)));
  };
  const groups = [
    { words: 'like the part in hand', of: here.filter((ghost) => isLikeInHand(ghost, editor)) },
    { words: 'test points', of: here.filter(({ kind }) => kind === 'test-point') },
    { words: 'holes', of: here.filter(({ kind }) => kind === 'hole') },
    { words: 'rows of pins', of: here.filter(({ kind }) => kind === 'pin-row') },
    { words: 'of all kinds', of: here },
  ];
  return (
    <fieldset className="board-tools" aria-label="What the photo proposes">
      <button type="button" disabled={asking} onClick={() => void ask()}>
        {asking ? 'Looking at the photo …' : 'Propose from the photo'}
      </button>
      {groups.map(
        ({ words, of }) =>
          of.length > 0 && (
            <button key={words} type="button" onClick={() => take(of)}>
              Accept {of.length} {words}
            </button>
          ),
      )}
      {here.length > 0 && (
        <button type="button" onClick={() => onGhosts(ghosts.filter(({ side }) => side !== editor.side))}>
          Wave {counted(here.length, 'proposal')} away
        </button>
      )}
      {here.length > 0 && (
        <p className="small muted">
          Dashed is what the photo seems to show. Click one to put the part in hand there; with the tool Select a click waves it away. What
          is accepted can be corrected like any part.
        </p>
      )}
    </fieldset>
  );
}
