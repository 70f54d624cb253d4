export interface Pair {
  readonly key: string;
  readonly expected: number;
  readonly came: number;
}

interface PairPlotProps {
  readonly pairs: readonly Pair[];
  readonly say: (value: number) => string;
}

const [WIDTH, HEIGHT, LEFT, BOTTOM] = [420, 300, 62, 40];

/** What came over what was expected; on the line it came as expected, above it more. Not below zero. */
export function PairPlot({ pairs, say }: PairPlotProps) {
  if (pairs.length < 2) return null;
  const top = 1.1 * Math.max(1, ...pairs.flatMap(({ expected, came }) => [expected, came]));
  const x = (value: number): number => LEFT + ((WIDTH - LEFT - 12) * Math.max(0, value)) / top;
  const y = (value: number): number => HEIGHT - BOTTOM - ((HEIGHT - BOTTOM - 10) * Math.max(0, value)) / top;
  return (
    <svg className="plot plot-pairs" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <line className="plot-grid" x1={LEFT} x2={WIDTH - 12} y1={y(top * share)} y2={y(top * share)} />
          <text className="plot-text" x={LEFT - 6} y={y(top * share) + 4} textAnchor="end">
            {say(top * share)}
          </text>
          <text className="plot-text" x={x(top * share)} y={HEIGHT - BOTTOM + 16} textAnchor={share === 1 ? 'end' : 'middle'}>
            {say(top * share)}
          </text>
        </g>
      ))}
      <line className="plot-same" x1={x(0)} y1={y(0)} x2={x(top)} y2={y(top)} />
      {pairs.map(({ key, expected, came }) => (
        <circle key={key} className="plot-own" cx={x(expected)} cy={y(came)} r="4.5" />
      ))}
      <text className="plot-text" x={(LEFT + WIDTH) / 2} y={HEIGHT - 4} textAnchor="middle">
        expected →, came ↑
      </text>
    </svg>
  );
}
