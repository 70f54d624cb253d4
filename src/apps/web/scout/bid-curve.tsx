import type { LotView } from '../../../bench/views/index.ts';
import { money, roughMoney } from '../format/money.ts';
import { chance } from '../format/number.ts';

const [WIDTH, HEIGHT, LEFT, RIGHT, FOOT] = [640, 210, 56, 48, 24];

/** Price against expected profit (line, left scale) and chance of a loss (dashes, right scale), with the asked price and the ceiling. */
export function BidCurve({ lot }: { readonly lot: LotView }) {
  const { curve, currency } = lot;
  const top = curve.at(-1)!.price_minor;
  if (top <= 0) return null;
  const profits = curve.map(({ profit_minor: profit }) => profit);
  const [low, high] = [Math.min(0, ...profits), Math.max(1, ...profits)];
  const x = (minor: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * Math.min(top, minor)) / top;
  const y = (share: number): number => 8 + (HEIGHT - FOOT - 8) * (1 - share);
  const profitY = (minor: number): number => y((minor - low) / (high - low));
  const path = (at: (point: LotView['curve'][number]) => number): string =>
    curve.map((point, i) => `${i === 0 ? 'M' : 'L'}${x(point.price_minor).toFixed(1)} ${at(point).toFixed(1)}`).join('');
  const marks = [
    { minor: lot.ceiling_minor, name: 'ceiling' },
    { minor: lot.asks_minor, name: 'asked' },
  ].filter(({ minor }) => minor <= top);
  return (
    <figure>
      <svg className="plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <line className="plot-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={profitY(0)} y2={profitY(0)} />
        {[high, 0, low].map((minor) => (
          <text key={minor} className="plot-text" x={LEFT - 6} y={profitY(minor) + 4} textAnchor="end">
            {roughMoney(minor, currency)}
          </text>
        ))}
        {[0, 0.5, 1].map((share) => (
          <text key={share} className="plot-text" x={WIDTH - RIGHT + 6} y={y(share) + 4}>
            {Math.round(share * 100)} %
          </text>
        ))}
        {marks.map(({ minor, name }, i) => (
          <g key={name}>
            <line className="plot-mark" x1={x(minor)} x2={x(minor)} y1="8" y2={HEIGHT - FOOT} />
            <text className="plot-text" x={x(minor) + 4} y={20 + 14 * i}>
              {name}
            </text>
          </g>
        ))}
        <path className="plot-line" d={path((point) => profitY(point.profit_minor))} />
        <path className="plot-line plot-loss" d={path((point) => y(point.loss_chance))} />
        <text className="plot-text" x={LEFT} y={HEIGHT - 6}>
          {roughMoney(0, currency)}
        </text>
        <text className="plot-text" x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end">
          {roughMoney(top, currency)}
        </text>
      </svg>
      <figcaption className="small muted">
        By the price that is paid: expected profit (line, left) and chance of a loss (dashes, right). At the asked{' '}
        {money(lot.asks_minor, currency)} a profit of {money(lot.at_asked.profit_minor, currency)} is expected and the chance of a loss is{' '}
        {chance(lot.at_asked.loss_chance)}; the ceiling is {money(lot.ceiling_minor, currency)}. From {lot.states} sampled states of the
        lot.
      </figcaption>
    </figure>
  );
}
