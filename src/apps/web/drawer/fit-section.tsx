import { useMemo, useState } from 'react';
import { assertFit, drawFit, rankFits, type Pattern, type RankedFit } from '../../../core/fit/index.ts';
import { askSentence, fitSentence, readPatternFile, reasonSentence } from '../../../bench/fit/index.ts';
import { csvLines } from '../format/csv-lines.ts';
import { Field } from '../ui/field.tsx';
import { Section } from '../ui/section.tsx';

interface Named {
  readonly file: string;
  readonly pattern: Pattern;
}

const ACCEPT = '.kicad_mod,.csv,text/csv,text/plain';
const SHOWN = 12;

/** Which of these parts fit that place: from files of pads, on this machine only. */
export function FitSection() {
  const [place, setPlace] = useState<readonly Named[]>([]);
  const [parts, setParts] = useState<readonly Named[]>([]);
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const under = place[0]?.pattern;
  const fits = useMemo(() => (under && parts.length > 0 ? ranked(under, parts) : []), [under, parts]);
  const take = async (files: FileList | null, set: (read: readonly Named[]) => void): Promise<void> => {
    const read = await Promise.all([...(files ?? [])].map(readFile));
    setTroubles(read.flatMap((each) => (typeof each === 'string' ? [each] : [])));
    set(read.filter((each) => typeof each !== 'string'));
  };
  return (
    <Section id="fit" title="Does it fit?">
      <div className="fields">
        <Field label="Pads of the place on the board" hint="A land pattern (.kicad_mod) or a table of pads (CSV)">
          <input type="file" accept={ACCEPT} onChange={(event) => void take(event.target.files, setPlace)} />
        </Field>
        <Field label="Parts that may go there" hint="One file or several, of the same kinds">
          <input type="file" multiple accept={ACCEPT} onChange={(event) => void take(event.target.files, setParts)} />
        </Field>
      </div>
      {troubles.length > 0 && (
        <div role="alert" className="trouble">
          {troubles.map((trouble) => (
            <p key={trouble}>{trouble}</p>
          ))}
        </div>
      )}
      <ul className="fits" aria-live="polite">
        {under && fits.slice(0, SHOWN).map((each, i) => <FitLine key={each.part.file} ranked={each} place={under} isOpen={i === 0} />)}
      </ul>
    </Section>
  );
}

/** The pattern of a file, or a sentence that says why there is none. */
async function readFile(file: File): Promise<Named | string> {
  const read = readPatternFile(file.name, await file.text(), csvLines);
  return read.ok ? { file: file.name, pattern: read.pattern } : `${file.name} cannot be read: ${read.detail}. Mend it and choose it again.`;
}

function ranked(place: Pattern, parts: readonly Named[]): readonly RankedFit<Named>[] {
  const { fits } = rankFits(place, parts);
  for (const { part, fit } of fits) assertFit(part.pattern, place, fit);
  return fits;
}

interface FitLineProps {
  readonly ranked: RankedFit<Named>;
  readonly place: Pattern;
  readonly isOpen: boolean;
}

/** One part: the answer, why and what to measure, and a picture of it over the pads. */
function FitLine({ ranked: { part, fit }, place, isOpen }: FitLineProps) {
  const label = `${part.file} over the pads: ${fitSentence(fit)}`;
  const picture = drawFit(part.pattern, place, fit, label);
  return (
    <li>
      <details open={isOpen}>
        <summary>
          {part.file}: {fitSentence(fit)}
        </summary>
        <ul>
          {fit.reasons.map((reason) => (
            <li key={JSON.stringify(reason)}>{reasonSentence(reason)}</li>
          ))}
          {fit.asks.map((ask) => (
            <li key={JSON.stringify(ask)}>{askSentence(ask)}</li>
          ))}
        </ul>
        {picture !== '' && <img className="fit-picture" alt={label} src={`data:image/svg+xml,${encodeURIComponent(picture)}`} />}
      </details>
    </li>
  );
}
