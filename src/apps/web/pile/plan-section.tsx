import { Link } from 'wouter';
import type { PileView } from '../../../bench/views/index.ts';
import { moneySpread, roughMoney } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { ROAD_WORDS } from '../format/words.ts';
import { Section } from '../ui/section.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { Why } from '../ui/why.tsx';

/** What to do, best first. */
export function PlanSection({ pile }: { readonly pile: PileView }) {
  if (pile.plan.length === 0)
    return (
      <Section id="plan" title="The plan">
        <p>
          Nothing waits for you. <Link href="/scout">Scout for the next one</Link>.
        </p>
      </Section>
    );
  return (
    <Section
      id="plan"
      title="The plan"
      aside={`expected ${roughMoney(pile.value_minor, pile.currency)} in about ${duration(pile.minutes)}`}
    >
      <ol className="plan">
        {pile.plan.map((line) => (
          <PlanLine key={line.row.id} line={line} currency={pile.currency} />
        ))}
      </ol>
    </Section>
  );
}

function PlanLine({ line, currency }: { readonly line: PileView['plan'][number]; readonly currency: string }) {
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
