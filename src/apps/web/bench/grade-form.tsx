import { useState } from 'react';
import { criteriaFound, GRADE_MEANS, gradeByScale, SCALE_1, type Judged } from '../../../bench/grading/index.ts';
import { gradeItem, type Grade } from '../actions/grade-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { CriterionFields } from './criterion-fields.tsx';
import { useUnit } from './unit-context.ts';

/** The condition, by the scale salvor-1: what was found by each criterion, the grade that follows, and one tap for it or for another. */
export function GradeForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [text, setText] = useState(file.grade?.text ?? '');
  const [said, setSaid] = useState<Judged>({});
  const judged: Judged = { ...criteriaFound(file), ...said };
  return (
    <div className="form">
      <CriterionFields judged={judged} onJudged={(id, value) => setSaid({ ...said, [id]: value })} />
      <ByScale judged={judged} />
      <Field label="What a buyer should know" hint="Marks, what is original and what was replaced">
        <textarea value={text} onChange={(event) => setText(event.target.value)} />
      </Field>
      <ul className="plain-list runners">
        {(Object.keys(GRADE_MEANS) as Grade[]).map((grade) => (
          <li key={grade}>
            <button
              type="button"
              disabled={busy}
              aria-pressed={file.grade?.grade === grade}
              onClick={() => void record(gradeItem(file.row.id, grade, text, judged))}
            >
              {grade === 'parts' ? 'Parts' : `Grade ${grade}`}
              <small>{GRADE_MEANS[grade]}</small>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** What the scale makes of it; the person has the last word. */
function ByScale({ judged }: { readonly judged: Judged }) {
  const { grade, heldBackBy, open } = gradeByScale(SCALE_1, judged);
  const name = (id: string): string => SCALE_1.criteria.find((criterion) => criterion.id === id)!.name.toLowerCase();
  if (grade === null) return null;
  return (
    <p className="small" aria-live="polite">
      By the scale {SCALE_1.id}: <strong>{grade === 'parts' ? 'for parts' : `grade ${grade}`}</strong>
      {heldBackBy.length > 0 && `, held back by ${heldBackBy.map(name).join(', ')}`}.{' '}
      {open.length > 0 && `Not looked at: ${open.map(name).join(', ')}; the report says so. `}You may give another one.
    </p>
  );
}
