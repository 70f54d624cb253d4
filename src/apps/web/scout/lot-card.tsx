import type { LotView } from '../../../bench/views/index.ts';
import { useLot } from '../api/queries.ts';
import { money, roughMoney } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { Answer } from '../ui/answer.tsx';
import { Section } from '../ui/section.tsx';
import { useSettled } from '../ui/use-settled.ts';
import { Why } from '../ui/why.tsx';
import { BidCurve } from './bid-curve.tsx';
import { lotQuestionOf, type ListingForm } from './listing-form.ts';

const VERDICTS = { buy: 'Buy it', haggle: 'Haggle', leave: 'Leave it' } as const;

/** What the lot is worth to this pile: the most to pay for the profit and risk that the person set. */
export function LotCard({ form }: { readonly form: ListingForm }) {
  const question = lotQuestionOf(useSettled(form, 600));
  const lot = useLot(question);
  if (question === null) return null;
  return (
    <Section id="lot" title="To your pile" aside={lot.isFetching ? 'being weighed …' : undefined}>
      <Answer query={lot}>{(view) => <Weighed lot={view} />}</Answer>
    </Section>
  );
}

function Weighed({ lot }: { readonly lot: LotView }) {
  const { currency, at_asked: at } = lot;
  return (
    <>
      <p className="headline">
        {VERDICTS[lot.verdict]}, up to {money(lot.ceiling_minor, currency)}
        <span className="headline-aside">asked {money(lot.asks_minor, currency)}, all costs of buying included</span>
      </p>
      <Why lines={lot.why} open />
      <BidCurve lot={lot} />
      <dl className="figures">
        <div>
          <dt>Worth to your pile</dt>
          <dd>
            {roughMoney(lot.worth_minor, currency)}
            <small>{roughMoney(lot.bias_minor, currency)} taken off for the keenest bidder's error</small>
          </dd>
        </div>
        <div>
          <dt>Profit at the asked price</dt>
          <dd>
            {roughMoney(at.profit_minor, currency)}
            {at.per_hour_minor !== null && <small>{money(at.per_hour_minor, currency)} an hour</small>}
          </dd>
        </div>
        <div>
          <dt>Chance of a loss then</dt>
          <dd>{chance(at.loss_chance)}</dd>
        </div>
        <div>
          <dt>Work that it adds</dt>
          <dd>{duration(lot.minutes)}</dd>
        </div>
      </dl>
    </>
  );
}
