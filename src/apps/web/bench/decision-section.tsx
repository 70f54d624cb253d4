import type { DecisionView } from '../../../bench/views/index.ts';
import { money, moneySpread, roughMoney } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { ROAD_WORDS } from '../format/words.ts';
import { Section } from '../ui/section.tsx';
import { Why } from '../ui/why.tsx';
import { InThePlan } from '../plan/in-the-plan.tsx';
import { useUnit } from './unit-context.ts';

/** The four roads of a unit, with what each is expected to bring. */
export function DecisionSection() {
  const { file, bench } = useUnit();
  const { decision, row } = file;
  if (row.kind !== 'unit') return null;
  return (
    <Section id="decision" title="Which road" aside={<b>{ROAD_WORDS[decision.road]}</b>}>
      <InThePlan itemId={row.id} />
      <Why lines={decision.why} open />
      <ul className="plain-list roads">
        {decision.options.map((option) => (
          <RoadLine key={option.road} option={option} chosen={option.road === decision.road} currency={bench.currency} />
        ))}
      </ul>
    </Section>
  );
}

interface RoadLineProps {
  readonly option: DecisionView['options'][number];
  readonly chosen: boolean;
  readonly currency: string;
}

function RoadLine({ option, chosen, currency }: RoadLineProps) {
  return (
    <li className={chosen ? 'road road-chosen' : 'road'}>
      <div className="row-apart">
        <h3>{ROAD_WORDS[option.road]}</h3>
        {option.possible ? <b>{roughMoney(option.value_minor, currency)}</b> : <span className="muted">not possible now</span>}
      </div>
      {option.possible && <p className="small muted">{facts(option, currency)}</p>}
      <Why lines={option.why} />
    </li>
  );
}

function facts(option: RoadLineProps['option'], currency: string): string {
  const spread = `8 times in 10 from ${moneySpread(option.low_minor, option.high_minor, currency)}`;
  return [
    option.low_minor < option.high_minor ? spread : '',
    option.chance > 0 ? `ends working: ${chance(option.chance)}` : '',
    duration(option.minutes),
    option.spend_minor > 0 ? `spends ${money(option.spend_minor, currency)}` : '',
  ]
    .filter((fact) => fact !== '')
    .join(' · ');
}
