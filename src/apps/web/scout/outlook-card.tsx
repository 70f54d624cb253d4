import type { OutlookView } from '../../../bench/views/index.ts';
import { hypothesisWords } from '../bench/hypothesis-words.ts';
import { money, moneySpread, roughMoney } from '../format/money.ts';
import { chance, counted, duration } from '../format/number.ts';
import { Bar } from '../ui/bar.tsx';
import { Section } from '../ui/section.tsx';
import { Why } from '../ui/why.tsx';

const VERDICTS = { buy: 'Buy it', haggle: 'Haggle', leave: 'Leave it' } as const;
const SHOWN_CAUSES = 6;

/** What the listing is worth to this bench, and why. */
export function OutlookCard({ outlook, count }: { readonly outlook: OutlookView; readonly count: number }) {
  const { currency } = outlook;
  return (
    <Section id="outlook" title="Outlook" className={`verdict-${outlook.verdict}`}>
      <p className="headline">
        {VERDICTS[outlook.verdict]}, up to {money(Math.max(0, outlook.ceiling_minor), currency)}
        <span className="headline-aside">
          asked {money(outlook.asks_minor, currency)}, postage included{count > 1 ? `, for ${count}` : ''}
        </span>
      </p>
      <Why lines={outlook.why} open />
      <dl className="figures">
        <div>
          <dt>Worth once it is here</dt>
          <dd>
            {roughMoney(outlook.value_minor, currency)}
            <small>8 times in 10 from {moneySpread(outlook.low_minor, outlook.high_minor, currency)}</small>
          </dd>
        </div>
        <div>
          <dt>Chance to lose at that price</dt>
          <dd>{chance(outlook.loss_chance)}</dd>
        </div>
        <div>
          <dt>Ends as a working one</dt>
          <dd>
            {chance(outlook.mendable)}
            <small>works as it is: {chance(outlook.works_as_is)}</small>
          </dd>
        </div>
        <div>
          <dt>Work</dt>
          <dd>{duration(outlook.minutes)}</dd>
        </div>
        <div>
          <dt>The seller is right</dt>
          <dd>
            {chance(outlook.honesty.chance)}
            <small>{counted(outlook.honesty.claims_checked, 'claim')} checked so far</small>
          </dd>
        </div>
      </dl>
      <div>
        <h3>Likeliest causes</h3>
        {outlook.hypotheses.slice(0, SHOWN_CAUSES).map((each) => (
          <Bar key={hypothesisWords(each)} label={hypothesisWords(each)} value={each.chance} />
        ))}
      </div>
    </Section>
  );
}
