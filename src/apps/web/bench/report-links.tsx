import { useState } from 'react';
import { useUnit } from './unit-context.ts';

const CHOICES = [
  { id: 'money', name: 'What it cost and brought' },
  { id: 'persons', name: 'Who sold it and who bought it' },
  { id: 'words', name: 'Notes, captions and remarks as they were typed' },
] as const;
type Choice = (typeof CHOICES)[number]['id'];

/** The condition report for whoever gets the unit, and its story for friends: pages that hold all they show. */
export function ReportLinks() {
  const { row, proof, grade } = useUnit().file;
  const [chosen, setChosen] = useState<ReadonlySet<Choice>>(new Set());
  const base = `/api/items/${encodeURIComponent(row.id)}`;
  const query = new URLSearchParams([...chosen].map((id) => [id, 'yes'])).toString();
  const toggle = (id: Choice): void => setChosen(new Set(chosen.has(id) ? [...chosen].filter((each) => each !== id) : [...chosen, id]));
  return (
    <div className="form">
      <h3>Condition report</h3>
      <p className="small">
        Photos before and after, what is its own and what was replaced, each test with what was measured and who signed what, the grade, and
        how a unit with a lithium cell is sent. {proof.ready ? '' : 'Its proof is not complete, and the report says so. '}
        {grade === null ? 'It is not graded yet. ' : ''}Money and names are not on it.
      </p>
      <div className="row">
        <a className="button main" href={`${base}/report.pdf`} target="_blank" rel="noreferrer">
          Report as PDF
        </a>
        <a className="button" href={`${base}/report.html`} target="_blank" rel="noreferrer">
          Report as a page
        </a>
      </div>
      <h3>Story</h3>
      <p className="small">One page for friends or followers: its photos in order, what was found and done, and the time it took.</p>
      <fieldset className="chips">
        <legend>Left out unless you tick it</legend>
        {CHOICES.map(({ id, name }) => (
          <label key={id} className="check-line">
            <input type="checkbox" checked={chosen.has(id)} onChange={() => toggle(id)} /> {name}
          </label>
        ))}
      </fieldset>
      <div className="row">
        <a className="button" href={`${base}/story.html${query === '' ? '' : `?${query}`}`} target="_blank" rel="noreferrer">
          See the story
        </a>
        <a className="button" href={`${base}/story.html${query === '' ? '' : `?${query}`}`} download={`story-${row.number}.html`}>
          Save it as a file
        </a>
      </div>
    </div>
  );
}
