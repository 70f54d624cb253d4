import { Link, useSearchParams } from 'wouter';
import { CALCULATORS } from '../../../bench/calculators/index.ts';
import { useTitle } from '../ui/use-title.ts';
import { CalculatorSheet } from './calculator-sheet.tsx';

/** Every calculator under one page; the address names one, and may fill in its fields. */
export default function CalculatorsPage() {
  const [search] = useSearchParams();
  const chosen = CALCULATORS.find(({ id }) => id === search.get('tool')) ?? CALCULATORS[0]!;
  useTitle(chosen.name);
  return (
    <>
      <header className="page-head">
        <h1>Calculators</h1>
        <p className="lead">Each says its formula, where it is from, where it holds, and how far off it may be.</p>
      </header>
      <nav aria-label="Calculators">
        <ul className="tools">
          {CALCULATORS.map(({ id, name }) => (
            <li key={id}>
              <Link href={`/calculators?tool=${id}`} className="button" {...(id === chosen.id ? { 'aria-current': 'page' as const } : {})}>
                {name}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <CalculatorSheet key={`${chosen.id} ${search.toString()}`} calculator={chosen} given={Object.fromEntries(search)} />
    </>
  );
}
