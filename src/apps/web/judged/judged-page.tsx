import { Link } from 'wouter';
import type { CalibrationView } from '../../../bench/views/index.ts';
import { useCalibration } from '../api/queries.ts';
import { money, roughMoney } from '../format/money.ts';
import { Answer } from '../ui/answer.tsx';
import { Section } from '../ui/section.tsx';
import { useTitle } from '../ui/use-title.ts';
import { Why } from '../ui/why.tsx';
import { DecisionsPart } from './decisions-part.tsx';
import { EstimatesPart } from './estimates-part.tsx';
import { ForecastPart } from './forecast-part.tsx';

/** What was advised, held against what came of it. */
export default function JudgedPage() {
  const calibration = useCalibration();
  useTitle('How good the advice was');
  return (
    <>
      <h1>How good the advice was</h1>
      <p>
        <Link href="/books">Back to the books</Link>
      </p>
      <Answer query={calibration}>{(view) => <Judged view={view} />}</Answer>
    </>
  );
}

function Judged({ view }: { readonly view: CalibrationView }) {
  const { currency } = view;
  const inMoney = (minor: number): string => roughMoney(minor, currency);
  return (
    <>
      {view.judged < view.to_judge && (
        <output>
          Looking back: {view.judged} of {view.to_judge} events so far.
        </output>
      )}
      <Section id="said" title="Did it come as it was said?">
        {view.forecasts.length === 0 && <p className="muted">Nothing can be judged yet: it begins with the first trial, remedy or sale.</p>}
        <div className="judged">
          {view.forecasts.map((forecast) => (
            <ForecastPart key={forecast.about} forecast={forecast} />
          ))}
        </div>
        <Why lines={view.why} summary="How this is reckoned" />
      </Section>
      {view.price.length + view.minutes.length > 0 && (
        <Section id="estimates" title="Price, minutes and parts">
          <div className="judged">
            <EstimatesPart title="Price of one sold" estimates={view.price} say={inMoney} />
            <EstimatesPart title="Minutes on one unit" estimates={view.minutes} say={(minutes) => `${Math.round(minutes)} min`} />
            <EstimatesPart title="Parts for one unit" estimates={view.parts} say={(minor) => money(Math.round(minor), currency)} />
          </div>
        </Section>
      )}
      {view.best.length + view.worst.length > 0 && (
        <Section id="decisions" title="What the decisions teach">
          <div className="judged">
            <DecisionsPart title="Better than thought" none="None yet." decisions={view.best} currency={currency} />
            <DecisionsPart title="Worse than thought" none="None yet." decisions={view.worst} currency={currency} />
          </div>
        </Section>
      )}
    </>
  );
}
