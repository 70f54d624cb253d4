import { useRef, useState, type KeyboardEvent } from 'react';
import { toPicture, type Frame } from '../board/frame.ts';
import { usePanZoom } from '../board/use-pan-zoom.ts';
import type { Marks, Spot } from './photo-marks.ts';
import type { LoadedPhoto } from './use-photo.ts';

interface PhotoStageProps {
  readonly photo: LoadedPhoto;
  readonly marks: Marks;
  /** What the picture is, for those who do not see it; how many pads are marked unless it is said. */
  readonly title?: string;
  readonly onMark: (spot: Spot) => void;
  readonly onNudge: (by: Spot) => void;
  readonly onUndo: () => void;
}

/** An arrow key moves the cross by this share of what is seen; with Shift by ten times as much. */
const STEP_SHARE = 0.004;
const ARROWS: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const NUDGES = [
  { label: 'Move the last mark left', sign: '←', by: { x: -1, y: 0 } },
  { label: 'Move the last mark right', sign: '→', by: { x: 1, y: 0 } },
  { label: 'Move the last mark up', sign: '↑', by: { x: 0, y: -1 } },
  { label: 'Move the last mark down', sign: '↓', by: { x: 0, y: 1 } },
] as const;

/** The photo to mark on: by click or finger, or with the keys by a cross. */
export function PhotoStage({ photo, marks, title, onMark, onNudge, onUndo }: PhotoStageProps) {
  const svg = useRef<SVGSVGElement>(null);
  const frame: Frame = { width: photo.width, height: photo.height, side: 'front' };
  const [cross, setCross] = useState<Spot>({ x: photo.width / 2, y: photo.height / 2 });
  const mark = (spot: Spot): void => {
    const held = { x: clamp(spot.x, photo.width), y: clamp(spot.y, photo.height) };
    setCross(held);
    onMark(held);
  };
  const pan = usePanZoom({ svg, frame, onTap: (at) => mark(toPicture(frame, at)), onDrag: null });
  const seenPx = photo.width / pan.view.zoom;
  const onKeyDown = (event: KeyboardEvent): void => {
    const arrow = ARROWS[event.key];
    if (event.key === 'Enter') mark(cross);
    else if (!arrow) return pan.onKeyDown(event);
    else {
      const step = Math.max(1, STEP_SHARE * seenPx) * (event.shiftKey ? 10 : 1);
      const next = { x: clamp(cross.x + step * arrow[0], photo.width), y: clamp(cross.y + step * arrow[1], photo.height) };
      setCross(next);
      pan.show(toPicture(frame, next), pan.view.zoom);
    }
    event.preventDefault();
  };
  return (
    <div className="board-window">
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- see its tabIndex */}
      <fieldset
        className="board-stage"
        aria-label="Photo: arrow keys move the cross, Enter marks, plus and minus zoom, 0 shows all"
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what is marked by finger must be marked by keys, too (WCAG 2.1.1)
        tabIndex={0}
        onKeyDown={onKeyDown}
      >
        <svg
          ref={svg}
          className={`board board-map photo-map ${pan.view.zoom > 1 ? 'board-near' : ''}`}
          role="img"
          aria-label={title ?? `The photo with ${marks.pads.length} pads marked`}
          viewBox={pan.box}
          {...pan.pointer}
        >
          <image href={photo.url} x="0" y="0" width={photo.width} height={photo.height} />
          <MarkShapes marks={marks} cross={cross} unit={seenPx / 400} />
        </svg>
      </fieldset>
      <fieldset className="board-tools" aria-label="Move the picture and the last mark">
        <button type="button" onClick={pan.closer}>
          Closer
        </button>
        <button type="button" disabled={pan.view.zoom <= 1} onClick={pan.farther}>
          Farther
        </button>
        {NUDGES.map(({ label, sign, by }) => (
          <button key={label} type="button" className="icon" aria-label={label} onClick={() => onNudge(by)}>
            {sign}
          </button>
        ))}
        <button type="button" onClick={onUndo}>
          Take the last mark back
        </button>
      </fieldset>
    </div>
  );
}

const clamp = (at: number, size: number): number => Math.min(size, Math.max(0, at));

/** Marks in a size that stays the same on the screen. */
function MarkShapes({
  marks: { scale, pending, pads },
  cross,
  unit,
}: {
  readonly marks: Marks;
  readonly cross: Spot;
  readonly unit: number;
}) {
  const [from, to] = scale;
  return (
    <>
      {from && to && <line className="mark-scale" x1={from.x} y1={from.y} x2={to.x} y2={to.y} strokeWidth={unit} />}
      {[...scale, ...pending].map(({ x, y }, i) => (
        // oxlint-disable-next-line react/no-array-index-key -- spots have no name, and their order is what they are
        <circle key={i} className="mark-spot" cx={x} cy={y} r={3 * unit} strokeWidth={unit} />
      ))}
      {pads.map(({ name, xPx, yPx, wPx, hPx, round }, i) => (
        // oxlint-disable-next-line react/no-array-index-key -- pads may share a name, and their order is what they are
        <g key={i}>
          <rect
            className="mark-pad"
            x={xPx - wPx / 2}
            y={yPx - hPx / 2}
            width={wPx}
            height={hPx}
            rx={round ? Math.min(wPx, hPx) / 2 : 0}
            strokeWidth={unit}
          />
          <text className="mark-name" x={xPx} y={yPx} fontSize={9 * unit} strokeWidth={2 * unit}>
            {name}
          </text>
        </g>
      ))}
      <path
        className="mark-cross"
        d={`M${cross.x - 8 * unit} ${cross.y}h${16 * unit}M${cross.x} ${cross.y - 8 * unit}v${16 * unit}`}
        strokeWidth={unit}
      />
    </>
  );
}
