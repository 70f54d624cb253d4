import { useState } from 'react';
import { bundleUrl } from '../api/model-bundles.ts';
import { photoUrl } from '../api/post-photos.ts';
import { useSharing } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { Field } from '../ui/field.tsx';
import { useSettled } from '../ui/use-settled.ts';

const SETTLE_MS = 300;

/** Shows everything that would leave, word for word and picture for picture, before it leaves. */
export function GiveForm({ modelId }: { readonly modelId: string }) {
  const [author, setAuthor] = useState('');
  const [licence, setLicence] = useState('CC BY 4.0');
  const name = author.trim() || 'A bench';
  const sharing = useSharing(modelId, useSettled(name, SETTLE_MS), useSettled(licence, SETTLE_MS));
  return (
    <div className="form">
      <div className="fields">
        <Field label="Your name in it" hint="Any name you like; empty for none of yours">
          <input value={author} maxLength={100} onChange={(event) => setAuthor(event.target.value)} />
        </Field>
        <Field label="Licence" hint="Under which others may use it; only give photos that are yours to give">
          <input value={licence} maxLength={100} onChange={(event) => setLicence(event.target.value)} />
        </Field>
      </div>
      <Answer query={sharing}>{(shown) => shown && <Leaves leaves={shown.leaves} photos={shown.photos} />}</Answer>
      <p>
        <a className="button main" href={bundleUrl(modelId, name, licence)} download={`model-${modelId}.zip`}>
          Save the bundle
        </a>
      </p>
    </div>
  );
}

function Leaves({ leaves, photos }: { readonly leaves: readonly string[]; readonly photos: readonly string[] }) {
  return (
    <>
      <p>This leaves with it, and nothing else:</p>
      <ul className="plain-list small leaves" aria-label="What leaves with the bundle">
        {leaves.map((line, at) => (
          <li key={at}>{line}</li>
        ))}
      </ul>
      {photos.length > 0 && (
        <ul className="thumbs">
          {photos.map((hash) => (
            <li key={hash}>
              <img src={photoUrl(hash, 'thumb')} alt="Leaves with it" loading="lazy" />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
