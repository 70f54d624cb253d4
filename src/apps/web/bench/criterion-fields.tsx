import { MARKS, SCALE_1, type Criterion, type CriterionId, type Judged } from '../../../bench/grading/index.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';

interface CriterionFieldsProps {
  readonly judged: Judged;
  readonly onJudged: (id: CriterionId, value: number | undefined) => void;
}

/** Each criterion of the scale with its limits and examples: what was measured stands there already. */
export function CriterionFields({ judged, onJudged }: CriterionFieldsProps) {
  return (
    <details className="why">
      <summary>What was found, by each criterion</summary>
      <div className="fields">
        {SCALE_1.criteria.map((criterion) =>
          criterion.id === 'marks' ? (
            <Pick
              key={criterion.id}
              label={criterion.name}
              options={[
                { id: '', name: 'Not looked at' },
                ...MARKS.map((name, i) => ({ id: String(i), name: `${name}: ${exampleOf(criterion, i)}` })),
              ]}
              value={judged.marks === undefined ? '' : String(judged.marks)}
              onChange={(id) => onJudged('marks', id === '' ? undefined : Number(id))}
            />
          ) : (
            <Field key={criterion.id} label={`${criterion.name}, ${criterion.unit}`} hint={limitsOf(criterion)}>
              <input
                type="number"
                min={0}
                step="any"
                inputMode="decimal"
                value={judged[criterion.id] ?? ''}
                onChange={(event) => onJudged(criterion.id, event.target.value === '' ? undefined : event.target.valueAsNumber)}
              />
            </Field>
          ),
        )}
      </div>
    </details>
  );
}

const limitsOf = ({ atMost }: Criterion): string =>
  `At most ${atMost.A} for A, ${atMost.B} for B, ${atMost.C} for C, ${atMost.D} for D. Empty: not looked at`;

const exampleOf = ({ examples }: Criterion, mark: number): string => examples[(['A', 'B', 'C', 'D'] as const)[mark]!] ?? '';
