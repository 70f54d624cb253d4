import { lazy, Suspense } from 'react';
import { TEST_NAMES } from '../../../bench/report/test-names.ts';
import { valueWords } from '../../../bench/report/value-words.ts';
import { Section } from '../ui/section.tsx';
import { useUnit } from './unit-context.ts';

const MeasuredForms = lazy(() => import('../measured/measured-forms.tsx'));

/** Logs of charge and heat, and checks with numbers: what was noted, and ways to make more. */
export function TestsSection() {
  const { file } = useUnit();
  if (file.row.kind !== 'unit') return null;
  return (
    <Section id="tests" title="Tests and logs">
      {file.tests.length > 0 && (
        <ul className="plain-list">
          {file.tests.map((test) => (
            <li key={test.event_id}>
              <strong>{TEST_NAMES[test.test]}</strong>{' '}
              <span className={test.verdict === 'bad' ? 'proof proof-fail' : 'proof'}>{test.verdict.replaceAll('-', ' ')}</span>
              {test.before_work && <span className="low"> before the last work</span>}
              {test.known_good && <span className="low"> known to be well</span>}
              <p className="small">{test.text}</p>
              {test.values.length > 0 && <p className="small muted">{test.values.map(valueWords).join(' · ')}</p>}
            </li>
          ))}
        </ul>
      )}
      <Suspense fallback={<p className="waiting">Opening …</p>}>
        <MeasuredForms />
      </Suspense>
    </Section>
  );
}
