import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { ProofStep } from './proof-step.tsx';
import { useUnit } from './unit-context.ts';

const WORDS = { open: 'open', pass: 'passed', fail: 'failed', 'signed-off': 'signed off' } as const;

/** Every test that must pass before the unit leaves. */
export function ProofSection() {
  const { file } = useUnit();
  const { steps, ready } = file.proof;
  if (steps.length === 0 || file.row.kind !== 'unit') return null;
  return (
    <Section id="proof" title="Proof" aside={ready ? 'Ready to leave' : `${steps.filter((step) => step.outcome === 'open').length} open`}>
      <div>
        {steps.map((step) => (
          <Fold
            key={step.id}
            title={
              <>
                {step.name} <span className={`proof proof-${step.outcome}`}>{WORDS[step.outcome]}</span>
              </>
            }
          >
            {step.reason !== '' && <p className="small">Reason: {step.reason}</p>}
            <ProofStep step={step} />
          </Fold>
        ))}
      </div>
    </Section>
  );
}
