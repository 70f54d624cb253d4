import { useId } from 'react';
import { FRAME, thinned, ticks, timeWords, type Curve } from './plot-frame.ts';

interface Band {
  readonly from: number;
  readonly to: number;
  readonly name: string;
}
interface Limit {
  readonly value: number;
  readonly name: string;
}
interface LogPlotProps {
  /** The first goes by the axis at the left, the second by that at the right. */
  readonly curves: readonly [Curve, ...Curve[]];
  /** Stretches of time with a name. */
  readonly bands?: readonly Band[];
  /** Limits of the first curve. */
  readonly limits?: readonly Limit[];
  /** The same in words, for those who do not see the picture. */
  readonly words: string;
}

/** Places on the plot: of a time, and of a value by an axis with its marks. */
interface Scale {
  readonly x: (seconds: number) => number;
  readonly y: (axis: number, value: number) => number;
}

const { width, height, left, right, top, bottom } = FRAME;
const CLASSES = ['plot-line', 'plot-line plot-line-other'] as const;

/** One or two curves over time, with named stretches and limits. */
export function LogPlot({ curves, bands = [], limits = [], words }: LogPlotProps) {
  const labelId = useId();
  const end = Math.max(...curves.map(({ points }) => points.at(-1)![0]));
  const axes = curves.map(({ points }, i) =>
    ticks([...thinned(points).map(([, value]) => value), ...(i === 0 ? limits.map(({ value }) => value) : [])]),
  );
  const scale: Scale = {
    x: (seconds) => left + ((width - left - right) * seconds) / (end || 1),
    y: (axis, value) => {
      const marks = axes[axis]!;
      return height - bottom - ((height - top - bottom) * (value - marks[0]!)) / (marks.at(-1)! - marks[0]!);
    },
  };
  return (
    <figure aria-labelledby={labelId}>
      <svg className="plot log-plot" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <Bands bands={bands} scale={scale} />
        <Axes axes={axes} end={end} scale={scale} />
        <Limits limits={limits} scale={scale} />
        {curves.map(({ name, points }, i) => (
          <polyline key={name} className={CLASSES[i] ?? CLASSES[1]} points={pathOf(points, Math.min(i, 1), scale)} />
        ))}
      </svg>
      <figcaption className="small muted" id={labelId}>
        {curves
          .map(({ name, unit }, i) => `${name} in ${unit}${curves.length > 1 ? (i === 0 ? ' (line, left)' : ' (dashes, right)') : ''}`)
          .join(', ')}
        . {words}
      </figcaption>
    </figure>
  );
}

const pathOf = (points: Curve['points'], axis: number, { x, y }: Scale): string =>
  thinned(points)
    .map(([seconds, value]) => `${x(seconds).toFixed(1)},${y(axis, value).toFixed(1)}`)
    .join(' ');

/** A stretch narrower than this has no room for its name, in units of the picture. */
const ROOM_FOR_NAME = 70;

function Bands({ bands, scale: { x } }: { readonly bands: readonly Band[]; readonly scale: Scale }) {
  return bands.map(({ from, to, name }, i) => (
    <g key={`${from} ${name}`}>
      {i % 2 === 1 && (
        <rect className="plot-band" x={x(from)} width={Math.max(0, x(to) - x(from))} y={top} height={height - top - bottom} />
      )}
      {x(to) - x(from) > ROOM_FOR_NAME && (
        <text className="plot-text" x={(x(from) + x(to)) / 2} y={top - 8} textAnchor="middle">
          {name}
        </text>
      )}
    </g>
  ));
}

function Axes({
  axes,
  end,
  scale: { x, y },
}: {
  readonly axes: readonly (readonly number[])[];
  readonly end: number;
  readonly scale: Scale;
}) {
  return (
    <>
      {axes[0]!.map((mark) => (
        <g key={mark}>
          <line className="plot-grid" x1={left} x2={width - right} y1={y(0, mark)} y2={y(0, mark)} />
          <text className="plot-text" x={left - 6} y={y(0, mark) + 4} textAnchor="end">
            {mark}
          </text>
        </g>
      ))}
      {axes[1]?.map((mark) => (
        <text key={mark} className="plot-text" x={width - right + 6} y={y(1, mark) + 4}>
          {mark}
        </text>
      ))}
      {[0, 0.5, 1].map((share) => (
        <text
          key={share}
          className="plot-text"
          x={x(end * share)}
          y={height - 6}
          textAnchor={share === 0 ? 'start' : share === 1 ? 'end' : 'middle'}
        >
          {timeWords(end * share, end)}
        </text>
      ))}
    </>
  );
}

function Limits({ limits, scale: { y } }: { readonly limits: readonly Limit[]; readonly scale: Scale }) {
  return limits.map(({ value, name }, i) => (
    <g key={name}>
      <line className="plot-limit" x1={left} x2={width - right} y1={y(0, value)} y2={y(0, value)} />
      <text className="plot-text" x={width - right - 4} y={y(0, value) + (i % 2 === 0 ? -4 : 14)} textAnchor="end">
        {name}
      </text>
    </g>
  ));
}
