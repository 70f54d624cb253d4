import type { MarketView } from '../../../bench/views/index.ts';
import { money, roughMoney } from '../format/money.ts';

const [WIDTH, HEIGHT, LEFT, BOTTOM] = [640, 220, 56, 24];
const DAY_MS = 86_400_000;

/** Each known sale by its day and price; the bench's own are filled, those that stand out are crossed. */
export function PriceScatter({ sales, outliers, currency }: Pick<MarketView, 'sales' | 'outliers' | 'currency'>) {
  if (sales.length < 2) return null;
  const days = sales.map(({ day }) => Date.parse(day) / DAY_MS);
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const top = 1.1 * Math.max(...sales.map(({ price_minor }) => price_minor));
  const x = (day: number): number => LEFT + ((WIDTH - LEFT - 12) * (day - first)) / Math.max(1, last - first);
  const y = (minor: number): number => HEIGHT - BOTTOM - ((HEIGHT - BOTTOM - 8) * minor) / top;
  const own = sales.filter((sale) => sale.own).length;
  return (
    <figure>
      <svg className="plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line className="plot-grid" x1={LEFT} x2={WIDTH} y1={y(top * share)} y2={y(top * share)} />
            <text className="plot-text" x={LEFT - 6} y={y(top * share) + 4} textAnchor="end">
              {roughMoney(top * share, currency)}
            </text>
          </g>
        ))}
        {sales.map((sale, i) =>
          outliers.includes(sale.id) ? (
            <path key={sale.id} className="plot-odd" d={`M${x(days[i]!) - 4} ${y(sale.price_minor) - 4}l8 8m0-8l-8 8`} />
          ) : (
            <circle key={sale.id} className={sale.own ? 'plot-own' : 'plot-other'} cx={x(days[i]!)} cy={y(sale.price_minor)} r="4" />
          ),
        )}
        <text className="plot-text" x={LEFT} y={HEIGHT - 6}>
          {sales[0]!.day}
        </text>
        <text className="plot-text" x={WIDTH - 4} y={HEIGHT - 6} textAnchor="end">
          {sales.at(-1)!.day}
        </text>
      </svg>
      <figcaption className="small muted">
        {sales.length} sales from {sales[0]!.day} to {sales.at(-1)!.day}, {own} of them your own (filled); {outliers.length} stand out
        (crossed) and pull less. Lowest {money(Math.min(...sales.map((sale) => sale.price_minor)), currency)}, highest{' '}
        {money(Math.max(...sales.map((sale) => sale.price_minor)), currency)}.
      </figcaption>
    </figure>
  );
}
