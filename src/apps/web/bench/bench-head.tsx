import { Link } from 'wouter';
import { STAGE_WORDS } from '../format/words.ts';
import { StatusMark } from '../ui/status-mark.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { Clock } from './clock.tsx';
import { JudgedVersion } from './judged-version.tsx';
import { useUnit } from './unit-context.ts';

/** Which unit this is, how far it is open, and its clock. */
export function BenchHead() {
  const { file, model: spec } = useUnit();
  const { row, model, stage } = file;
  return (
    <header className="bench-head">
      <div className="page-head">
        <h1>
          <StockTag number={row.number} /> {row.name}
        </h1>
        <p className="row small muted">
          <StatusMark status={row.status} />
          {row.kind === 'unit' && <span>{STAGE_WORDS[stage]}</span>}
          {spec.steps.length > 0 && row.kind === 'unit' && (
            <Link href={`/bench/${encodeURIComponent(row.id)}/opening`}>Open or close it</Link>
          )}
          <Link href={`/models/${encodeURIComponent(model.id)}`}>{model.name}</Link>
          <JudgedVersion />
          <Link href="/calculators">Calculators</Link>
          {row.seller !== '' && <span>from {row.seller}</span>}
          <a href={`/api/labels?items=${encodeURIComponent(row.id)}`} target="_blank" rel="noreferrer">
            Label (PDF)
          </a>
        </p>
      </div>
      <Clock />
    </header>
  );
}
