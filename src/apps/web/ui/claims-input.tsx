import type { Claim, FindingKind, Outcome } from '../../../bench/events/index.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import { FINDING_KINDS, FINDING_WORDS, OUTCOME_WORDS } from '../format/words.ts';
import { claimKey, functionSays, withFunction, withPlace, withUntested } from './claims.ts';
import { Chips } from './chips.tsx';
import { PlaceClaim } from './place-claim.tsx';

interface ClaimsInputProps {
  readonly model: ModelFile;
  readonly claims: readonly Claim[];
  readonly onChange: (claims: readonly Claim[]) => void;
}

const SAYS = [
  { value: 'not-said', label: 'Not said' },
  ...(Object.keys(OUTCOME_WORDS) as readonly Outcome[]).map((value) => ({ value, label: OUTCOME_WORDS[value] })),
] as readonly { readonly value: Outcome | 'not-said'; readonly label: string }[];

const PLACE_KINDS: readonly FindingKind[] = FINDING_KINDS.filter((kind) => kind !== 'nothing-wrong');

/** What the seller says, as chips: of each function, of places, or that nothing was tried. */
export function ClaimsInput({ model, claims, onChange }: ClaimsInputProps) {
  const untested = claims.some((claim) => claim.about === 'untested');
  return (
    <fieldset className="claims">
      <legend>What the seller says</legend>
      <label className="check-line">
        <input type="checkbox" checked={untested} onChange={(event) => onChange(withUntested(claims, event.target.checked))} />
        “Untested”
      </label>
      <div className="claim-functions">
        {model.functions.map((each) => (
          <Chips
            quiet="not-said"
            key={each.id}
            legend={each.name}
            options={SAYS}
            value={functionSays(claims, each.id)}
            onChange={(says) => onChange(withFunction(claims, each.id, says))}
          />
        ))}
      </div>
      <PlaceClaim blocks={model.blocks} kinds={PLACE_KINDS} add={(place, sees) => onChange(withPlace(claims, place, sees))} />
      <ul className="row plain-row">
        {claims.map(
          (claim) =>
            claim.about === 'place' && (
              <li key={claimKey(claim)}>
                <button
                  type="button"
                  aria-label={`Take away: ${placeWords(model, claim.place, claim.sees)}`}
                  onClick={() => onChange(claims.filter((each) => each !== claim))}
                >
                  {placeWords(model, claim.place, claim.sees)} ×
                </button>
              </li>
            ),
        )}
      </ul>
    </fieldset>
  );
}

const placeWords = (model: ModelFile, place: string, sees: FindingKind): string =>
  `${model.blocks.find((block) => block.id === place)?.name ?? place}: ${FINDING_WORDS[sees].toLowerCase()}`;
