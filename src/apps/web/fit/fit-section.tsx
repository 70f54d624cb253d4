import { useMemo, useState } from 'react';
import { partsFromCsv, withTold, type PartsRead } from '../../../bench/fit/index.ts';
import type { DrawerView } from '../../../bench/views/index.ts';
import { Section } from '../ui/section.tsx';
import { candidatesOf, keyOf, PLACE, toldOf, type AllTold } from './candidates.ts';
import { FitAnswer } from './fit-answer.tsx';
import type { NamedPattern } from './named-pattern.ts';
import { PartsSource } from './parts-source.tsx';
import { PlaceSource } from './place-source.tsx';
import { whichFitInTime } from './which-fit-in-time.ts';

const SHOWN = 20;
const NO_LIST: PartsRead = { parts: [], problems: [] };

interface FitSectionProps {
  readonly bags: DrawerView['bags'];
  /** A place that is known already: then the drawer is looked through at once. */
  readonly at?: NamedPattern | null;
}

/** Which of these parts fit that place: from files, photos, drawings, the drawer and suppliers' lists, on this device only. */
export function FitSection({ bags, at = null }: FitSectionProps) {
  const [place, setPlace] = useState<NamedPattern | null>(at);
  const [parts, setParts] = useState<readonly NamedPattern[]>([]);
  const [isDrawer, setDrawer] = useState(at !== null);
  const [list, setList] = useState<PartsRead>(NO_LIST);
  const [told, setTold] = useState<AllTold>({});
  const candidates = useMemo(() => candidatesOf(parts, isDrawer ? bags : [], list.parts, told), [parts, isDrawer, bags, list, told]);
  const answer = useMemo(() => {
    return place && whichFitInTime({ ...withTold(place.pattern, toldOf(told, PLACE)), name: place.name }, candidates);
  }, [place, candidates, told]);
  const byKey = new Map(candidates.map((candidate) => [keyOf(candidate), candidate]));
  return (
    <Section id="fit" title="Does it fit?">
      <PlaceSource place={place} onPlace={setPlace} />
      <PartsSource
        parts={parts}
        bags={bags}
        isDrawer={isDrawer}
        list={list}
        onParts={setParts}
        onDrawer={setDrawer}
        onList={(lines) => setList(lines.length === 0 ? NO_LIST : partsFromCsv(lines))}
      />
      {answer && !answer.done && <output>It takes too long: only {answer.fits.length} parts were tried. Ask for fewer at once.</output>}
      {!place && candidates.length > 0 && <output>Now the pads of the place on the board.</output>}
      <ul className="fits" aria-live="polite">
        {(answer?.fits ?? []).slice(0, SHOWN).map((line, i) => (
          <FitAnswer
            key={keyOf(line)}
            line={line}
            candidate={byKey.get(keyOf(line))!}
            placeName={place!.name}
            told={{ part: toldOf(told, keyOf(line)), place: toldOf(told, PLACE) }}
            bags={bags}
            isOpen={i === 0}
            onTell={(ofPart, ofPlace) => setTold({ ...told, [keyOf(line)]: ofPart, [PLACE]: ofPlace })}
          />
        ))}
      </ul>
      {answer && answer.fits.length > SHOWN && <p className="small muted">And {answer.fits.length - SHOWN} more that are no better.</p>}
    </Section>
  );
}
