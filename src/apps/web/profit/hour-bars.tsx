import type { BreakdownView } from '../../../bench/views/index.ts';
import { signedMoney } from '../format/money.ts';

const [WIDTH, ROW] = [480, 34];
const MOST = 12;

/** Profit per hour of each name as bars from zero, best first; the table beside it has the numbers. */
export function HourBars({ lines, currency }: { readonly lines: BreakdownView['by_model']; readonly currency: string }) {
  const timed = lines
    .flatMap(({ id, name, profit_per_hour_minor: minor }) => (minor === null ? [] : [{ id, name, minor }]))
    .sort((a, b) => b.minor - a.minor)
    .slice(0, MOST);
  if (timed.length === 0) return null;
  const [low, high] = [Math.min(0, ...timed.map(({ minor }) => minor)), Math.max(1, ...timed.map(({ minor }) => minor))];
  const x = (minor: number): number => (WIDTH * (minor - low)) / (high - low);
  return (
    <figure>
      <svg className="plot plot-pairs" viewBox={`0 0 ${WIDTH} ${ROW * timed.length}`} aria-hidden="true">
        {timed.map(({ id, name, minor }, i) => (
          <g key={id}>
            <text className="plot-text" x={0} y={ROW * i + 13}>
              {name}: {signedMoney(minor, currency)}
            </text>
            <rect
              className={minor < 0 ? 'plot-loss' : 'plot-own'}
              x={Math.min(x(0), x(minor))}
              y={ROW * i + 18}
              width={Math.max(1, Math.abs(x(minor) - x(0)))}
              height={9}
            />
          </g>
        ))}
        <line className="plot-zero" x1={x(0)} x2={x(0)} y1={0} y2={ROW * timed.length} />
      </svg>
      <figcaption className="small muted">
        Profit for each hour of work: best {timed[0]!.name} with {signedMoney(timed[0]!.minor, currency)}.
      </figcaption>
    </figure>
  );
}
