import { useState } from 'react';
import type { AskingView } from '../../../bench/views/index.ts';
import { useAsking } from '../api/queries.ts';
import { duration } from '../format/days.ts';
import { money, moneySpread } from '../format/money.ts';
import { chance } from '../format/number.ts';
import { Answer } from '../ui/answer.tsx';
import { Fold } from '../ui/fold.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { Why } from '../ui/why.tsx';

interface AskAdviceProps {
  readonly itemId: string;
  readonly currency: string;
  /** Takes the advised ask over into a form, where there is one. */
  readonly take?: (askMinor: number) => void;
}

/** What to ask for a unit, how it should step down, and whether to take a bid. */
export function AskAdvice({ itemId, currency, take }: AskAdviceProps) {
  const [bidMinor, setBidMinor] = useState<number | null>(null);
  const asking = useAsking(itemId, bidMinor);
  return (
    <Answer query={asking}>
      {(view) => (
        <div className="ask-advice">
          <p>
            Ask <strong>{money(view.ask_minor, currency)}</strong>: it leaves {money(view.net_minor, currency)}, and half of such offers are
            sold within {duration(view.median_days)}. One in condition {view.condition} sells for{' '}
            {moneySpread(view.price.low_minor, view.price.high_minor, currency)}; one in {Math.round(1 / view.return_chance)} comes back (
            {chance(view.return_chance)}).
          </p>
          {take && (
            <button type="button" onClick={() => take(view.ask_minor)}>
              Use this price
            </button>
          )}
          <Why lines={view.why} />
          <Fold title="While nobody buys">
            <Steps view={view} />
          </Fold>
          <Fold title="Somebody bids">
            <MoneyField label="The bid" currency={currency} valueMinor={bidMinor} onChange={setBidMinor} />
            <output>{view.bid && bidWords(view.bid, currency)}</output>
          </Fold>
        </div>
      )}
    </Answer>
  );
}

function Steps({ view }: { readonly view: AskingView }) {
  const turns = view.steps.filter((step, i) => i === 0 || step.ask_minor !== view.steps[i - 1]!.ask_minor);
  return (
    <ol className="plain-list">
      {turns.slice(0, 8).map((step) => (
        <li key={step.week}>
          {step.week === 0 ? 'Begin with' : `After ${step.week} ${step.week === 1 ? 'week' : 'weeks'} ask`}{' '}
          {money(step.ask_minor, view.currency)}
        </li>
      ))}
    </ol>
  );
}

function bidWords(bid: NonNullable<AskingView['bid']>, currency: string): string {
  if (bid.do === 'accept') return `Accept: it leaves ${money(bid.gain_minor, currency)} more than waiting is worth.`;
  return `Ask for ${money(bid.counter_minor, currency)} instead: waiting is worth as much as a bid of ${money(bid.reserve_minor, currency)}.`;
}
