import { useMemo, useState } from 'react';
import type { ModelFile } from '../../../bench/models/schema.ts';
import type { BoardMarks } from '../../../bench/views/board-marks.ts';
import type { Frame, Place } from '../board/frame.ts';
import { Section } from '../ui/section.tsx';
import { BrushBar } from './brush-bar.tsx';
import { drawn } from './editor-part.ts';
import { keyed } from './editor-keys.ts';
import { EditorStage } from './editor-stage.tsx';
import { movedBy, selectedParts, turnedOver } from './editor.ts';
import { GhostBar } from './ghost-bar.tsx';
import { GhostsLayer } from './ghosts-layer.tsx';
import { tappedWithGhosts, type Ghost } from './ghosts.ts';
import { FitHere } from './fit-here.tsx';
import type { LaidPhotos } from './lay-photos.ts';
import { fromBody } from './marked-part.ts';
import { PartList } from './part-list.tsx';
import { SelectedPanel, StepButtons } from './selected-panel.tsx';
import { useBoardEditor } from './use-board-editor.ts';

export interface BoardEditorProps {
  readonly file: ModelFile;
  readonly board: { readonly width_mm: number; readonly height_mm: number };
  readonly laid: LaidPhotos;
  readonly marks: BoardMarks;
}

/** Parts, test points, connectors and holes marked on the picture; every step is stored at once. */
export function BoardEditor({ file, board, laid, marks }: BoardEditorProps) {
  const parts = useMemo(() => marks.parts.map(fromBody), [marks.parts]);
  const { editor, change } = useBoardEditor(file.id, { parts, seq: marks.seq });
  const [drag, setDrag] = useState<Place | null>(null);
  const [ghosts, setGhosts] = useState<readonly Ghost[]>([]);
  const frame: Frame = { width: board.width_mm, height: board.height_mm, side: editor.side };
  const seen = drag ? movedBy(editor, drag) : editor;
  const shown = useMemo(() => [...seen.parts.values()].map((part) => drawn(part)), [seen.parts]);
  const isSelecting = editor.brush.tool === 'select' && editor.selected.size > 0;
  const [alone] = editor.selected.size === 1 ? selectedParts(editor) : [];
  const photo = marks[editor.side]?.photo;
  const lies = laid[editor.side];
  const other = editor.side === 'front' ? 'back' : 'front';
  return (
    <Section
      id="board"
      title="Parts"
      aside={
        <button type="button" onClick={() => change(turnedOver(editor))}>
          Show the {other}
        </button>
      }
    >
      <BrushBar editor={editor} blocks={file.blocks} onChange={change} />
      <EditorStage
        frame={frame}
        laid={laid[editor.side]}
        parts={shown}
        selected={editor.selected}
        pending={editor.pending}
        title={`The ${editor.side} of the board, ${board.width_mm.toFixed(1)} by ${board.height_mm.toFixed(1)} mm, with ${editor.parts.size} parts on both sides`}
        onTap={(at, reach, adds) => {
          const next = tappedWithGhosts(editor, ghosts, at, reach, adds);
          setGhosts(next.ghosts);
          change(next.editor);
        }}
        onDrag={
          isSelecting
            ? (by, done) => {
                setDrag(done ? null : by);
                if (done) change(movedBy(editor, by));
              }
            : null
        }
        onNudge={isSelecting ? (by) => change(movedBy(editor, by)) : null}
        onKey={({ key, shiftKey, ctrlKey, metaKey }) => {
          const next = keyed(editor, { key, shiftKey, withCtrl: ctrlKey || metaKey });
          if (next) change(next);
          return next !== null;
        }}
      >
        {(scale) => <GhostsLayer frame={frame} scale={scale} ghosts={ghosts} />}
      </EditorStage>
      {photo && lies && (
        <GhostBar hash={photo} laid={lies} board={board} editor={editor} ghosts={ghosts} onGhosts={setGhosts} onChange={change} />
      )}
      <StepButtons editor={editor} onChange={change} />
      <SelectedPanel editor={editor} blocks={file.blocks} onChange={change} />
      {alone && alone.kind !== 'hole' && <FitHere key={alone.ref} part={alone} />}
      <PartList editor={editor} onChange={change} />
    </Section>
  );
}
