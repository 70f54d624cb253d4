import { useState } from 'react';
import { inverted, mapped } from '../../../core/vision/align/homography.ts';
import type { Homography } from '../../../core/vision/index.ts';
import type { BoardSide } from '../../../bench/events/index.ts';
import { RegionPanel } from '../bench/region-panel.tsx';
import { SpotPanel } from '../bench/spot-panel.tsx';
import { useUnit } from '../bench/unit-context.ts';
import { hitAt, type Hit } from '../board/drawn-part.ts';
import type { Place } from '../board/frame.ts';
import { dragged, EMPTY_DRAFT, polygonOf, tapped, type RegionDraft } from '../board/region-draft.ts';
import { PinRangePanel } from './pin-range-panel.tsx';

/** What taps and fingers do on the pictures while something is noted by hand; places are px of the frame. */
export interface OwnTool {
  readonly tap: (at: Place) => void;
  readonly drag: ((from: Place, to: Place) => void) | null;
  readonly drawn: readonly (readonly [number, number])[] | null;
}

interface OwnFindingProps {
  readonly side: BoardSide;
  /** From px of the frame to mm of the board. */
  readonly map: readonly number[] | null;
  readonly tool: OwnTool | null;
  readonly setTool: (tool: OwnTool | null) => void;
}

type Mode = 'part' | 'area' | 'pins';

/** A finger reaches so far around the middle of its touch on a board, mm. */
const FINGER_MM = 1;

/** What the person sees and the comparison did not: at a part or pad, over an area, or along some pins. */
export function OwnFinding({ side, map, tool, setTool }: OwnFindingProps) {
  const { model, parts } = useUnit();
  const [mode, setMode] = useState<Mode | null>(null);
  const [hit, setHit] = useState<Hit | null>(null);
  const [draft, setDraft] = useState<RegionDraft>(EMPTY_DRAFT);
  const { board } = model;
  if (!map || !board) return <p className="small muted">{WHY_NOT}</p>;
  const size = { x: board.width_mm, y: board.height_mm };
  const face = side === 'board-front' ? 'front' : 'back';
  const toBoard = (at: Place): Place => placeUnder(map as unknown as Homography, at);
  const draw = (next: RegionDraft): void => {
    setDraft(next);
    setTool({
      tap: (at) => draw(tapped(next, toBoard(at), size)),
      drag: (from, to) => draw(dragged(toBoard(from), toBoard(to), size)),
      drawn: onPhoto(map as unknown as Homography, polygonOf(next)),
    });
  };
  const begin = (next: Mode): void => {
    setMode(next);
    setHit(null);
    if (next === 'area') draw(EMPTY_DRAFT);
    else if (next === 'part') setTool({ tap: (at) => setHit(hitAt(parts, face, toBoard(at), FINGER_MM)), drag: null, drawn: null });
    else setTool(null);
  };
  const close = (): void => {
    setMode(null);
    setTool(null);
  };
  if (mode === null)
    return (
      <div className="row">
        <span>You see something else?</span>
        {parts.length > 0 && (
          <button type="button" onClick={() => begin('part')}>
            At a part
          </button>
        )}
        <button type="button" onClick={() => begin('area')}>
          Over an area
        </button>
        {parts.length > 0 && (
          <button type="button" onClick={() => begin('pins')}>
            Along pins
          </button>
        )}
      </div>
    );
  if (mode === 'area' && tool) return <RegionPanel draft={draft} side={face} size={size} setDraft={draw} close={close} />;
  if (mode === 'pins') return <PinRangePanel side={face} close={close} />;
  if (hit) return <SpotPanel key={`${hit.part.ref}.${hit.pin}`} spot={hit} close={close} />;
  return (
    <div className="row">
      <output>Tap the part on one of the pictures.</output>
      <button type="button" className="quiet" onClick={close}>
        Leave it
      </button>
    </div>
  );
}

const WHY_NOT =
  'To mark on the picture what you see yourself, mark the corners of the board on the reference below. Without them, note it on the bench page.';

function placeUnder(map: Homography, { x, y }: Place): Place {
  const [mmX, mmY] = mapped(map, x, y);
  return { x: mmX, y: mmY };
}

function onPhoto(map: Homography, polygon: readonly (readonly [number, number])[]): [number, number][] {
  const back = inverted(map);
  return back ? polygon.map(([x, y]) => mapped(back, x, y)) : [];
}
