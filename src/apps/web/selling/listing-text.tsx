import { useState } from 'react';
import type { ListingTextView } from '../../../bench/views/index.ts';
import { photoUrl } from '../api/post-photos.ts';
import { useListingText } from '../api/queries.ts';
import { sideWords } from '../bench/side-words.ts';
import { money } from '../format/money.ts';
import { Answer } from '../ui/answer.tsx';
import { Fold } from '../ui/fold.tsx';
import { TemplateForm } from './template-form.tsx';

/** The text of a listing from what is on file, with what bears it out, the photo set, the weight for the post and what to mind. */
export function ListingText({ itemId }: { readonly itemId: string }) {
  const answer = useListingText(itemId);
  return (
    <Answer query={answer}>
      {(view) => (
        <div className="sale-text">
          {view.cautions.length > 0 && (
            <ul className="cautions" aria-label="Take care">
              {view.cautions.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
          )}
          <Words text={view.text} />
          {view.own_claims.length > 0 && (
            <p className="loss">
              Your own words say {view.own_claims.map((words) => `“${words}”`).join(', ')} of every unit, whatever is on file of it. A place
              in braces says only what was proved.
            </p>
          )}
          <p className="small muted">{postWords(view)}</p>
          <Fold title="What bears it out">
            <ul className="plain-list">
              {view.facts.map(({ text, event_ids: events }) => (
                <li key={text}>
                  {text} <small className="muted">{events.length === 0 ? 'from the model' : `${events.length} on its log`}</small>
                </li>
              ))}
            </ul>
          </Fold>
          <Fold title="Photos for it">
            <PhotoSet view={view} />
          </Fold>
          <Fold title="Your words for all listings">
            <TemplateForm key={view.template} template={view.template} places={view.places} />
          </Fold>
        </div>
      )}
    </Answer>
  );
}

function Words({ text }: { readonly text: string }) {
  const [copied, setCopied] = useState<boolean | null>(null);
  const copy = async (): Promise<void> =>
    setCopied(
      await navigator.clipboard.writeText(text).then(
        () => true,
        () => false,
      ),
    );
  return (
    <>
      <pre className="sale-words">{text}</pre>
      <div className="row">
        <button type="button" onClick={() => void copy()}>
          Copy the text
        </button>
        <output className="small">
          {copied === true && 'Copied.'}
          {copied === false && 'The browser does not let it be copied: mark the text and copy it by hand.'}
        </output>
      </div>
    </>
  );
}

function postWords({ weight_g: weight, postage_minor: postage, currency }: ListingTextView): string {
  if (!weight) return 'The model does not say what one weighs: weigh the parcel.';
  return `About ${Math.round(weight.unit)} g, some ${Math.round(weight.packed)} g packed in a padded box. To send it costs ${money(postage, currency)}, as you have noted it; weigh the parcel before you pay.`;
}

function PhotoSet({ view }: { readonly view: ListingTextView }) {
  const { photos, photos_missing: missing } = view;
  return (
    <>
      {missing.length > 0 && <p>Still to be taken: {missing.map((side) => sideWords(side).toLowerCase()).join(', ')}.</p>}
      <ul className="thumbs">
        {photos.map(({ hash, side, caption }) => (
          <li key={hash}>
            <a className="thumb" href={photoUrl(hash, 'original')} download>
              <img src={photoUrl(hash, 'thumb')} alt="" loading="lazy" />
              <span className="small">
                Save: {sideWords(side)} {caption}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
