import type { MarkPair, Point } from '../../../core/vision/index.ts';

interface MarkCrossesProps {
  readonly marks: readonly MarkPair[];
  readonly ends: readonly Point[];
  /** A size that stays the same on the screen. */
  readonly unit: number;
}

/** Known places as circles, the ends of what is measured as crosses with a line between them. */
export function MarkCrosses({ marks, ends, unit }: MarkCrossesProps) {
  const [a, b] = ends;
  return (
    <>
      {marks.map(({ name, photoPx: [x, y] }) => (
        <circle key={name} className="mark-spot" cx={x} cy={y} r={5 * unit} strokeWidth={1.5 * unit} />
      ))}
      {a && b && <line className="scale-line" x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} strokeWidth={1.5 * unit} />}
      {ends.map(([x, y], i) => (
        <path
          key={i}
          className="scale-line"
          d={`M${x - 5 * unit} ${y}H${x + 5 * unit}M${x} ${y - 5 * unit}V${y + 5 * unit}`}
          strokeWidth={1.5 * unit}
        />
      ))}
    </>
  );
}
