import { useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import { BoardTools } from '../board/board-tools.tsx';
import { boardClasses, FINGER_PX, nameSize } from '../board/board-look.ts';
import type { DrawnPart } from '../board/drawn-part.ts';
import { toPicture, type Frame, type Place } from '../board/frame.ts';
import { SelectedLayer } from '../board/marks-layer.tsx';
import { PartsLayer } from '../board/parts-layer.tsx';
import { usePanZoom } from '../board/use-pan-zoom.ts';
import type { LaidPhoto } from './lay-photos.ts';
import { photoMatrix } from './photo-frame.ts';

interface EditorStageProps {
  readonly frame: Frame;
  readonly laid: LaidPhoto | null;
  readonly parts: readonly DrawnPart[];
  readonly selected: ReadonlySet<string>;
  readonly pending: Place | null;
  readonly title: string;
  /** Null where the picture is only looked at: then there is no cross. */
  readonly onTap: ((at: Place, reach: number, adds: boolean) => void) | null;
  /** While given, a finger that is drawn over the board moves what is selected. */
  readonly onDrag: ((by: Place, done: boolean) => void) | null;
  /** A key that is not one of the cross; true where it did something. */
  readonly onKey: (event: KeyboardEvent) => boolean;
  /** While given, the arrow keys move what is selected instead of the cross. */
  readonly onNudge: ((by: Place) => void) | null;
  /** Drawn over the parts; `scale` keeps marks at their size on the screen. */
  readonly children?: (scale: number) => ReactNode;
}

/** An arrow key moves by this share of what is seen; with Shift by ten times as much. */
const STEP_SHARE = 0.004;
const ARROWS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const MARKING =
  'Board: arrow keys move the cross or what is selected, Enter marks, R turns, Delete takes away, plus and minus zoom, 0 shows all';
const LOOKING = 'Board: arrow keys move, plus and minus zoom, 0 shows all';

/** The photo of one side of a board with what is marked on it: to mark on by click or finger, or with the keys by a cross. */
export function EditorStage(props: EditorStageProps) {
  const { frame, laid, parts, selected, pending, title, onTap, onDrag, onKey, onNudge, children } = props;
  const svg = useRef<SVGSVGElement>(null);
  const adds = useRef(false);
  const [cross, setCross] = useState<Place>({ x: frame.width / 2, y: frame.height / 2 });
  const pan = usePanZoom({
    svg,
    frame,
    onTap: (at, mmPerPx) => {
      setCross(at);
      onTap?.(at, FINGER_PX * mmPerPx, adds.current);
    },
    onDrag: onDrag && ((from, to, done) => onDrag({ x: to.x - from.x, y: to.y - from.y }, done)),
  });
  const scale = 1 / pan.view.zoom ** 0.8;
  const step = (key: string, isFar: boolean): Place | null => {
    const arrow = ARROWS[key];
    if (!arrow) return null;
    const mm = ((STEP_SHARE * frame.width) / pan.view.zoom) * (isFar ? 10 : 1);
    return { x: (frame.side === 'front' ? 1 : -1) * mm * arrow[0], y: -mm * arrow[1] };
  };
  const moveCross = (by: Place): void => {
    const next = { x: clamp(cross.x + by.x, frame.width), y: clamp(cross.y + by.y, frame.height) };
    setCross(next);
    pan.show(next, pan.view.zoom);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const withCtrl = event.ctrlKey || event.metaKey;
    const by = withCtrl ? null : step(event.key, event.shiftKey);
    if (by && (onNudge || onTap)) (onNudge ?? moveCross)(by);
    else if (event.key === 'Enter' && onTap) onTap(cross, 0, event.shiftKey);
    else if (!onKey(event)) return pan.onKeyDown(event);
    event.preventDefault();
  };
  return (
    <div className="board-window">
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- see its tabIndex */}
      <fieldset
        className="board-stage"
        aria-label={onTap ? MARKING : LOOKING}
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what is marked by finger must be marked by keys, too (WCAG 2.1.1)
        tabIndex={0}
        onKeyDown={onKeyDown}
        onPointerDownCapture={(event) => {
          adds.current = event.shiftKey || event.ctrlKey;
          // A finger leaves a field that is typed in only after its tap has been dealt with: here it counts before, and the keys work at once.
          if (event.target instanceof SVGElement) event.currentTarget.focus({ preventScroll: true });
        }}
      >
        <svg
          ref={svg}
          className={`${boardClasses(pan.view.zoom, onDrag !== null)} grow-map`}
          role="img"
          aria-label={title}
          viewBox={pan.box}
          style={nameSize(pan.view.zoom)}
          {...pan.pointer}
        >
          <rect className="board-edge" x="0" y="0" width={frame.width} height={frame.height} strokeWidth="0.2" />
          {laid && (
            <image
              href={laid.photo.url}
              width={laid.photo.width}
              height={laid.photo.height}
              transform={`matrix(${photoMatrix(laid.lies, frame).join(' ')})`}
            />
          )}
          <PartsLayer frame={frame} parts={parts} />
          {parts.map(
            (part) => selected.has(part.ref) && <SelectedLayer key={part.ref} frame={frame} scale={scale} part={part} pin={null} />,
          )}
          {children?.(scale)}
          {pending && <Spot at={toPicture(frame, pending)} scale={scale} />}
          {onTap && <Cross at={toPicture(frame, cross)} scale={scale} />}
        </svg>
      </fieldset>
      <BoardTools pan={pan} />
    </div>
  );
}

const clamp = (at: number, size: number): number => Math.min(size, Math.max(0, at));

const Spot = ({ at, scale }: { readonly at: Place; readonly scale: number }) => (
  <circle className="mark-spot" cx={at.x} cy={at.y} r={0.6 * scale} strokeWidth={0.25 * scale} />
);

const Cross = ({ at, scale }: { readonly at: Place; readonly scale: number }) => (
  <path
    className="mark-cross"
    d={`M${at.x - scale} ${at.y}h${2 * scale}M${at.x} ${at.y - scale}v${2 * scale}`}
    strokeWidth={0.15 * scale}
  />
);
