import type { ModelFile } from '../../../bench/models/index.ts';
import { duration } from '../format/number.ts';
import { STAGE_WORDS } from '../format/words.ts';
import { FromWhere } from '../grow/from-where.tsx';
import { MatLinks } from '../opening/mat-links.tsx';
import { Cautions } from '../ui/cautions.tsx';
import { Section } from '../ui/section.tsx';

/** How it opens, and what holds it together. */
export function ModelSteps({ file }: { readonly file: ModelFile }) {
  if (file.steps.length === 0 && file.fasteners.length === 0) return null;
  const stepNames = new Map(file.steps.map((step) => [step.id, step.name]));
  const fasteners = new Map(file.fasteners.map((each) => [each.id, each]));
  return (
    <Section id="steps" title="Opening it">
      <ol className="steps">
        {file.steps.map((step) => {
          const fastener = fasteners.get(step.fasteners ?? '');
          return (
            <li key={step.id}>
              {step.name}{' '}
              <span className="small muted">
                {duration(step.minutes)}
                {step.tool !== undefined && `, ${step.tool}`}
                {fastener && `, ${fastener.count} × ${fastener.name}`}
                {step.after.length > 0 && `, after: ${step.after.map((id) => stepNames.get(id) ?? id).join(', ')}`}
                {step.reaches !== undefined && `, then it is ${STAGE_WORDS[step.reaches].toLowerCase()}`}
              </span>
              <FromWhere section="steps" id={step.id} />
              <Cautions cautions={step.cautions} />
            </li>
          );
        })}
      </ol>
      {file.fasteners.length > 0 && (
        <ul className="plain-list">
          {file.fasteners.map((each) => (
            <li key={each.id}>
              {each.count} × {each.name}: {each.drive}, {each.length_mm} mm long <FromWhere section="fasteners" id={each.id} />
            </li>
          ))}
        </ul>
      )}
      {file.fasteners.length > 0 && <MatLinks modelId={file.id} />}
    </Section>
  );
}
