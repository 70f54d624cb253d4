import { useMemo, useState } from 'react';
import type { Claim, Outcome } from '../../../bench/events/index.ts';
import {
  claimsThatCount,
  correctedReading,
  keyOfReading,
  readListing,
  type ListingReading,
  type ReadableModel,
  type ReadClaim,
  type ReadingCorrection,
  type TaughtWords,
} from '../../../bench/scout/index.ts';
import { OUTCOME_WORDS } from '../format/words.ts';
import { Fold } from '../ui/fold.tsx';
import { Pick } from '../ui/pick.tsx';
import { useSettled } from '../ui/use-settled.ts';
import { claimWords, remarkWords, ruleWords } from './claim-words.ts';
import { highlights } from './highlights.ts';
import { TeachForm } from './teach-form.tsx';

interface ReadWordsProps {
  readonly text: string;
  readonly model: ReadableModel;
  readonly taught: readonly TaughtWords[];
  /** The claims of the reading as corrected, how many units it speaks of, and, where it is used for all of them, the claims on each. */
  readonly use: (claims: readonly Claim[], units: number, ofEach: readonly (readonly Claim[])[]) => void;
}

/** The claims in the words of a listing: shown where they were read, corrected, and then used. Nothing of it leaves this machine. */
export function ReadWords({ text, model, taught, use }: ReadWordsProps) {
  const settled = useSettled(text, 200);
  const read = useMemo(() => readListing(settled, model, taught), [settled, model, taught]);
  const [corrections, setCorrections] = useState<readonly ReadingCorrection[]>([]);
  const [unit, setUnit] = useState('all');
  const reading = correctedReading(read, corrections);
  const correct = (correction: ReadingCorrection): void => setCorrections((now) => [...now, correction]);
  return (
    <fieldset className="claims">
      <legend>What its words say</legend>
      <p className="listing-words">
        {highlights(settled, reading.claims).map(({ from, text: words, read: claim }) =>
          claim ? (
            <mark key={from} className={claim.counts ? 'counts' : 'doubtful'} title={claimWords(model, claim.claim)}>
              {words}
            </mark>
          ) : (
            <span key={from}>{words}</span>
          ),
        )}
      </p>
      {reading.claims.length === 0 && <p className="muted">Nothing in these words is a claim that is known here.</p>}
      <ul className="read-claims">
        {reading.claims.map((claim, i) => (
          <ClaimLine
            key={keyOfReading(read.claims[i]!)}
            name={keyOfReading(read.claims[i]!)}
            read={claim}
            model={model}
            correct={correct}
          />
        ))}
      </ul>
      {reading.remarks.length > 0 && (
        <Fold title="Noticed, and no claim">
          <ul>
            {reading.remarks.map((remark) => (
              <li key={`${remark.code} ${remark.span.from}`}>{remarkWords(remark)}</li>
            ))}
          </ul>
        </Fold>
      )}
      <div className="fields">
        {reading.units > 1 && <Pick label="For" options={unitOptions(reading.units)} value={unit} onChange={setUnit} />}
        <button
          type="button"
          onClick={() =>
            use(claimsThatCount(reading, unit === 'all' ? null : Number(unit)), reading.units, unit === 'all' ? ofEach(reading) : [])
          }
        >
          Use these claims
        </button>
      </div>
      <Fold title="Teach it words">
        <TeachForm model={model} taught={taught} />
      </Fold>
    </fieldset>
  );
}

const ofEach = (reading: ListingReading): (readonly Claim[])[] =>
  reading.units > 1 ? Array.from({ length: reading.units }, (_, i) => claimsThatCount(reading, i + 1)) : [];

const unitOptions = (units: number) => [
  { id: 'all', name: 'all of them' },
  ...Array.from({ length: units }, (_, i) => ({ id: String(i + 1), name: `unit ${i + 1}` })),
];

interface ClaimLineProps {
  readonly name: string;
  readonly read: ReadClaim;
  readonly model: ReadableModel;
  readonly correct: (correction: ReadingCorrection) => void;
}

/** One claim: whether it counts, what it says, and where that was read. */
function ClaimLine({ name, read, model, correct }: ClaimLineProps) {
  const { claim } = read;
  return (
    <li>
      <label className="check-line">
        <input
          type="checkbox"
          checked={read.counts}
          onChange={(event) => correct({ does: 'count', key: name, counts: event.target.checked })}
        />
        <span>
          {claimWords(model, claim)}{' '}
          <small className="muted">
            “{read.words}” · {ruleWords(read)}
          </small>
        </span>
      </label>
      {claim.about === 'function' && (
        <select
          aria-label={`What is said of ${claimWords(model, claim)}`}
          value={claim.says}
          onChange={(event) => correct({ does: 'change', key: name, claim: { ...claim, says: event.target.value as Outcome } })}
        >
          {(Object.keys(OUTCOME_WORDS) as readonly Outcome[]).map((says) => (
            <option key={says} value={says}>
              {OUTCOME_WORDS[says]}
            </option>
          ))}
        </select>
      )}
    </li>
  );
}
