import type { ScoutQuestion } from '../../../bench/views/index.ts';
import { useSellerQuestions } from '../api/queries.ts';
import { money, roughMoney } from '../format/money.ts';
import { chance } from '../format/number.ts';
import { Answer } from '../ui/answer.tsx';
import { LazyFold } from '../ui/lazy-fold.tsx';
import { Why } from '../ui/why.tsx';

/** What to ask the seller before buying, most worth first; worked out once it is unfolded. */
export function QuestionsCard({ question }: { readonly question: ScoutQuestion }) {
  return (
    <section className="sheet" aria-label="What to ask the seller">
      <LazyFold title="What to ask the seller">
        <Questions question={question} />
      </LazyFold>
    </section>
  );
}

function Questions({ question }: { readonly question: ScoutQuestion }) {
  const asked = useSellerQuestions(question);
  return (
    <Answer query={asked}>
      {({ questions, why, currency }) => (
        <>
          <ul className="plain-list">
            {questions.map((each) => (
              <li key={each.function}>
                <div className="row-apart">
                  <span>{each.ask}</span>
                  <b>worth {money(each.worth_minor, currency)}</b>
                </div>
                <p className="small muted">
                  likely yes with {chance(each.works_chance)}; the lot is worth {roughMoney(each.if_works_minor, currency)} on a yes,{' '}
                  {roughMoney(each.if_fails_minor, currency)} on a no
                </p>
              </li>
            ))}
          </ul>
          <Why lines={why} open />
        </>
      )}
    </Answer>
  );
}
