import type { CalibrationView } from '../../../bench/views/index.ts';

type Bands = CalibrationView['forecasts'][number]['bands'];

const [WIDTH, HEIGHT, LEFT, BOTTOM] = [420, 300, 52, 40];
const x = (chance: number): number => LEFT + (WIDTH - LEFT - 14) * chance;
const y = (share: number): number => HEIGHT - BOTTOM - (HEIGHT - BOTTOM - 10) * share;

/** Share that came over the chance that was said, with the limits of nine in ten; on the line it came as said. A greater dot stands for more cases. */
export function ReliabilityPlot({ bands }: { readonly bands: Bands }) {
  const most = Math.max(...bands.map(({ count }) => count));
  return (
    <svg className="plot plot-pairs" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <line className="plot-grid" x1={LEFT} x2={WIDTH - 14} y1={y(share)} y2={y(share)} />
          <text className="plot-text" x={LEFT - 6} y={y(share) + 4} textAnchor="end">
            {100 * share} %
          </text>
          <text className="plot-text" x={x(share)} y={HEIGHT - BOTTOM + 16} textAnchor={share === 1 ? 'end' : 'middle'}>
            {100 * share} %
          </text>
        </g>
      ))}
      <line className="plot-same" x1={x(0)} y1={y(0)} x2={x(1)} y2={y(1)} />
      {bands.map((band) => (
        <g key={band.low}>
          <line className="plot-limits" x1={x(band.said)} x2={x(band.said)} y1={y(band.came_low)} y2={y(band.came_high)} />
          <circle className="plot-own" cx={x(band.said)} cy={y(band.came)} r={3 + 5 * Math.sqrt(band.count / most)} />
        </g>
      ))}
      <text className="plot-text" x={(LEFT + WIDTH) / 2} y={HEIGHT - 4} textAnchor="middle">
        said →, came ↑
      </text>
    </svg>
  );
}
