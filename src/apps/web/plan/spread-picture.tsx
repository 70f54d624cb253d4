import type { PlanView } from '../../../bench/views/index.ts';
import { roughMoney } from '../format/money.ts';

type Profit = NonNullable<PlanView['plan']>['profit'];

const [WIDTH, HEIGHT, FOOT] = [640, 130, 22];

/** How the profit is spread over outcomes: a bar for each range, a line at the mean. */
export function SpreadPicture({ profit, currency }: { readonly profit: Profit; readonly currency: string }) {
  const { from_minor: from, to_minor: to, shares } = profit.bars;
  if (to <= from) return null;
  const most = Math.max(...shares);
  const step = WIDTH / shares.length;
  const x = (minor: number): number => (WIDTH * (minor - from)) / (to - from);
  const y = (share: number): number => ((HEIGHT - FOOT) * share) / most;
  const mean = Math.min(WIDTH - 1, Math.max(1, x(profit.mean_minor)));
  return (
    <figure>
      <svg className="plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {shares.map((share, i) => (
          <rect
            key={from + i * step}
            className={from + ((i + 0.5) / shares.length) * (to - from) < 0 ? 'plot-bar plot-loss' : 'plot-bar'}
            x={i * step + 1}
            width={step - 2}
            y={HEIGHT - FOOT - y(share)}
            height={y(share)}
          />
        ))}
        <line className="plot-mark" x1={mean} x2={mean} y1="0" y2={HEIGHT - FOOT} />
        <text className="plot-text" x="0" y={HEIGHT - 5}>
          {roughMoney(from, currency)}
        </text>
        <text className="plot-text" x={WIDTH} y={HEIGHT - 5} textAnchor="end">
          {roughMoney(to, currency)}
        </text>
      </svg>
      <figcaption className="small muted">
        Profit over 2000 simulated outcomes, prices swinging as they do; the line is the mean, {roughMoney(profit.mean_minor, currency)}.
      </figcaption>
    </figure>
  );
}
