import type { Caution } from '../../../bench/models/index.ts';
import { CAUTION_WORDS } from '../../../bench/caution-words.ts';

/** The dangers of this step, each in the same words wherever it shows. */
export function Cautions({ cautions }: { readonly cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  return (
    <ul className="cautions" aria-label="Take care">
      {cautions.map((caution) => (
        <li key={caution}>{CAUTION_WORDS[caution]}</li>
      ))}
    </ul>
  );
}
