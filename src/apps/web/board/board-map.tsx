import { useEffect, useRef } from 'react';
import type { Region } from '../../../bench/events/index.ts';
import { boardClasses, FINGER_PX, nameSize } from './board-look.ts';
import { BoardTools } from './board-tools.tsx';
import { hitAt, type DrawnPart, type Hit } from './drawn-part.ts';
import type { Frame, Place } from './frame.ts';
import {
  LeadsLayer,
  LikelyLayer,
  NetLayer,
  RegionShape,
  SeenLayer,
  SelectedLayer,
  WorkLayer,
  type LeadMark,
  type LikelyPart,
  type SeenMark,
} from './marks-layer.tsx';
import { PartsLayer } from './parts-layer.tsx';
import { usePanZoom } from './use-pan-zoom.ts';

export interface BoardMapProps {
  readonly frame: Frame;
  readonly parts: readonly DrawnPart[];
  readonly title: string;
  readonly likely?: readonly LikelyPart[];
  readonly seen?: readonly SeenMark[];
  readonly leads?: readonly LeadMark[];
  /** Its pads are marked. */
  readonly net?: string | null;
  /** Parts that an advised remedy is done to. */
  readonly work?: readonly { readonly ref: string }[];
  readonly chosen?: Hit | null;
  readonly choose?: (hit: Hit | null) => void;
  /** While an area is drawn: its corners so far, and what taps and fingers do to it. */
  readonly drawing?: {
    readonly polygon: Region['polygon'];
    readonly tap: (at: Place) => void;
    readonly drag: (from: Place, to: Place) => void;
  } | null;
}

const NONE: readonly never[] = [];
const SHOWN_AT = 2.4;

/** The board of a model by the places of its parts, to move, zoom and point at by finger, mouse and keys. */
export function BoardMap(props: BoardMapProps) {
  const {
    frame,
    parts,
    title,
    likely = NONE,
    seen = NONE,
    leads = NONE,
    net = null,
    work = NONE,
    chosen = null,
    choose,
    drawing = null,
  } = props;
  const svg = useRef<SVGSVGElement>(null);
  const pan = usePanZoom({
    svg,
    frame,
    onTap: (at, mmPerPx) => (drawing ? drawing.tap(at) : choose?.(hitAt(parts, frame.side, at, FINGER_PX * mmPerPx))),
    onDrag: drawing ? (from, to) => drawing.drag(from, to) : null,
  });
  useShownWhenChosen(chosen, pan.show);
  const scale = 1 / pan.view.zoom ** 0.8;
  return (
    <div className="board-window">
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- see its tabIndex */}
      <fieldset
        className="board-stage"
        aria-label="Board: arrow keys move, plus and minus zoom, 0 shows all"
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what is moved by finger must be moved by keys, too (WCAG 2.1.1)
        tabIndex={0}
        onKeyDown={pan.onKeyDown}
      >
        <svg
          ref={svg}
          className={boardClasses(pan.view.zoom, drawing !== null)}
          role="img"
          aria-label={title}
          viewBox={pan.box}
          style={nameSize(pan.view.zoom)}
          {...pan.pointer}
        >
          <rect className="board-edge" x="0" y="0" width={frame.width} height={frame.height} rx="1.5" strokeWidth="0.3" />
          <PartsLayer frame={frame} parts={parts} />
          <LikelyLayer frame={frame} parts={parts} likely={likely} />
          {net !== null && <NetLayer frame={frame} parts={parts} net={net} />}
          <SeenLayer frame={frame} scale={scale} seen={seen} />
          {drawing && <Draft frame={frame} scale={scale} polygon={drawing.polygon} />}
          <WorkLayer frame={frame} scale={scale} parts={parts} work={work} />
          {chosen && <SelectedLayer frame={frame} scale={scale} part={chosen.part} pin={chosen.pin} />}
          <LeadsLayer frame={frame} scale={scale} leads={leads} />
        </svg>
      </fieldset>
      <BoardTools pan={pan} />
    </div>
  );
}

/** A part that was chosen from the list comes into the middle; one that was tapped is there already. */
function useShownWhenChosen(chosen: Hit | null, show: (at: Place, zoom: number) => void): void {
  const ref = chosen?.isListed ? chosen.part.ref : null;
  useEffect(() => {
    if (ref !== null && chosen) show(chosen.part, SHOWN_AT);
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- moved once for each choice, not with every move of the picture
  }, [ref]);
}

function Draft({ frame, scale, polygon }: { readonly frame: Frame; readonly scale: number; readonly polygon: Region['polygon'] }) {
  const flipped = frame.side === 'back';
  return (
    <>
      {polygon.length > 1 && <RegionShape frame={frame} polygon={polygon} title="The area that you draw" isDraft />}
      {polygon.map(([x, y], i) => (
        // oxlint-disable-next-line react/no-array-index-key -- a corner is known by its place in the row alone
        <circle key={i} className="region-corner" cx={flipped ? frame.width - x : x} cy={frame.height - y} r={0.7 * scale} />
      ))}
    </>
  );
}
