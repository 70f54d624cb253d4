import { Link } from 'wouter';
import type { PileView } from '../../../bench/views/index.ts';
import { moneySpread, roughMoney } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { ROAD_WORDS } from '../format/words.ts';
import { StockTag } from '../ui/stock-tag.tsx';
import { Why } from '../ui/why.tsx';

/** The advice on units, each by itself, best first. */
export function UnitLines({ lines, currency }: { readonly lines: PileView['plan']; readonly currency: string }) {
  return (
    <ol className="plan">
      {lines.map((line) => (
        <UnitLine key={line.row.id} line={line} currency={currency} />
      ))}
    </ol>
  );
}

function UnitLine({ line, currency }: { readonly line: PileView['plan'][number]; readonly currency: string }) {
  const { row } = line;
  return (
    <li className="plan-line">
      <Link href={`/bench/${encodeURIComponent(row.id)}`} className="plan-what">
        <StockTag number={row.number} />
        <span>
          <b>{line.headline}</b>
          <span className="small muted">{row.name}</span>
        </span>
      </Link>
      <div className="plan-worth">
        <b>{roughMoney(line.value_minor, currency)}</b>
        <span className="small muted">
          {ROAD_WORDS[line.road].toLowerCase()} · {duration(line.minutes)}
          {line.chance > 0 && ` · works in the end ${chance(line.chance)}`}
        </span>
        {line.low_minor < line.high_minor && (
          <span className="small muted">8 times in 10 from {moneySpread(line.low_minor, line.high_minor, currency)}</span>
        )}
      </div>
      <Why lines={line.why} />
    </li>
  );
}
