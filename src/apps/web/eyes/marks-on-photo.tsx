import { DIFFERENCE_WORDS } from '../../../bench/eyes/picture-words.ts';
import type { BlindZone, DifferenceView } from '../../../bench/views/index.ts';
import type { Place } from '../board/frame.ts';

interface MarksOnPhotoProps {
  readonly zones: readonly BlindZone[];
  readonly shown: readonly DifferenceView[];
  readonly chosen: DifferenceView | null;
  /** An area while it is drawn, px of the frame. */
  readonly drawn: readonly (readonly [number, number])[] | null;
  readonly unit: number;
}

/** Room around an outline, so that it does not cover what it is about, and around its box for a finger; px. */
const ROOM_PX = 6;

/** Outlines of differences with their numbers, and hatched squares where nothing was compared. */
export function MarksOnPhoto({ zones, shown, chosen, drawn, unit }: MarksOnPhotoProps) {
  return (
    <>
      <pattern id="eyes-hatch" width={8 * unit} height={8 * unit} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect className="eyes-hatch" width={3 * unit} height={8 * unit} />
      </pattern>
      {zones.flatMap(({ squares }) =>
        squares.map(([left, top, right, bottom]) => (
          <rect key={`${left} ${top}`} x={left} y={top} width={right - left} height={bottom - top} fill="url(#eyes-hatch)" />
        )),
      )}
      {shown.map((difference) => (
        <OutlineMark key={difference.rank} difference={difference} isChosen={difference.rank === chosen?.rank} unit={unit} />
      ))}
      {drawn && drawn.length > 1 && (
        <polygon className="eyes-drawn" points={drawn.map((spot) => spot.join()).join(' ')} strokeWidth={2 * unit} />
      )}
    </>
  );
}

function OutlineMark({
  difference,
  isChosen,
  unit,
}: {
  readonly difference: DifferenceView;
  readonly isChosen: boolean;
  readonly unit: number;
}) {
  const { left, top, right, bottom } = boxOf(difference);
  const state = isChosen ? 'eyes-chosen' : difference.verdict ? `eyes-${difference.verdict}` : '';
  return (
    <g className={`eyes-mark ${state}`}>
      <title>{`${difference.rank}: ${difference.part ?? ''} ${DIFFERENCE_WORDS[difference.shows]}`}</title>
      <rect className="eyes-halo" x={left} y={top} width={right - left} height={bottom - top} rx={3 * unit} strokeWidth={4 * unit} />
      <rect
        className="eyes-line"
        x={left}
        y={top}
        width={right - left}
        height={bottom - top}
        rx={3 * unit}
        strokeWidth={(isChosen ? 3 : 1.6) * unit}
      />
      <text className="eyes-number" x={left} y={top - 2 * unit} fontSize={11 * unit} strokeWidth={3 * unit}>
        {difference.rank}
      </text>
    </g>
  );
}

function boxOf({ outline }: DifferenceView): { left: number; top: number; right: number; bottom: number } {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  return {
    left: Math.min(...xs) - ROOM_PX,
    top: Math.min(...ys) - ROOM_PX,
    right: Math.max(...xs) + ROOM_PX,
    bottom: Math.max(...ys) + ROOM_PX,
  };
}

/** The smallest difference whose box holds the place. */
export function differenceAt(shown: readonly DifferenceView[], { x, y }: Place): DifferenceView | null {
  const here = shown.flatMap((difference) => {
    const { left, top, right, bottom } = boxOf(difference);
    return x >= left && x <= right && y >= top && y <= bottom ? [{ difference, area: (right - left) * (bottom - top) }] : [];
  });
  return here.toSorted((a, b) => a.area - b.area)[0]?.difference ?? null;
}
