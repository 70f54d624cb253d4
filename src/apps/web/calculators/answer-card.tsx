import { reckoningText, type Answer } from '../../../bench/calculators/index.ts';

/** One number: what it lies between, and folded under it formula, source, where it holds, and why it is no surer. */
export function AnswerCard({ answer }: { readonly answer: Answer }) {
  const { label, said, reckoning } = answer;
  const { formula, source, range, inRange, why } = reckoning;
  return (
    <div className="answer">
      <p className="small muted">{label}</p>
      <p className="answer-number">
        {reckoningText(reckoning)}
        {said !== undefined && <small>{said}</small>}
      </p>
      {!inRange && <p className="low">Outside what the formula is made for: {range}</p>}
      <details className="why">
        <summary>Formula and source</summary>
        <ul>
          <li>{formula}</li>
          <li>Source: {source}</li>
          <li>Holds for: {range}</li>
          <li>{why}</li>
        </ul>
      </details>
    </div>
  );
}
