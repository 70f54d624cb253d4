import { useState } from 'react';
import { gradeItem, type Grade } from '../actions/grade-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { useUnit } from './unit-context.ts';

const GRADES: readonly { readonly grade: Grade; readonly means: string }[] = [
  { grade: 'A', means: 'Works fully; no mark seen at arm’s length' },
  { grade: 'B', means: 'Works fully; light marks' },
  { grade: 'C', means: 'Works fully; plain wear or marks' },
  { grade: 'D', means: 'Works, with a named defect or a heavy mark' },
  { grade: 'parts', means: 'Does not work: for parts' },
];

/** The condition, by the scale salvor-1; one tap. */
export function GradeForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [text, setText] = useState(file.grade?.text ?? '');
  return (
    <div className="form">
      <Field label="What a buyer should know" hint="Marks, what is original and what was replaced">
        <textarea value={text} onChange={(event) => setText(event.target.value)} />
      </Field>
      <ul className="plain-list runners">
        {GRADES.map(({ grade, means }) => (
          <li key={grade}>
            <button
              type="button"
              disabled={busy}
              aria-pressed={file.grade?.grade === grade}
              onClick={() => void record(gradeItem(file.row.id, grade, text))}
            >
              {grade === 'parts' ? 'Parts' : `Grade ${grade}`}
              <small>{means}</small>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
