import { ProofStep } from './proof-step.tsx';
import { useUnit } from './unit-context.ts';

/** The first proof step that is still open, with how many remain. */
export function NextProof() {
  const { proof } = useUnit().file;
  const open = proof.steps.filter((step) => step.outcome === 'open' || step.outcome === 'fail');
  const [first] = open;
  if (first === undefined) return <p>Every step is done.</p>;
  return (
    <div className="form">
      <p className="small muted">
        Step {proof.steps.length - open.length + 1} of {proof.steps.length}
      </p>
      <ProofStep key={first.id} step={first} />
    </div>
  );
}
