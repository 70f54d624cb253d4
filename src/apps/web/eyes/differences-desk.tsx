import { useState, type KeyboardEvent } from 'react';
import { atStrictness } from '../../../core/vision/difference/strictness.ts';
import type { ComparisonView, DifferenceView, PhotoQuestion } from '../../../bench/views/index.ts';
import { wholeView, type Place } from '../board/frame.ts';
import type { HeldView } from '../board/use-pan-zoom.ts';
import { counted } from '../format/number.ts';
import { Section } from '../ui/section.tsx';
import { BlindZones } from './blind-zones.tsx';
import { ComparedPictures } from './compared-pictures.tsx';
import { DifferenceCard } from './difference-card.tsx';
import { DifferenceList } from './difference-list.tsx';
import { OwnFinding, type OwnTool } from './own-finding.tsx';

interface DifferencesDeskProps {
  readonly question: PhotoQuestion;
  readonly result: NonNullable<ComparisonView['result']>;
  readonly again: () => void;
}

const SLICE = 10;
const USUAL_STRICTNESS = 0.3;
/** So close is a difference looked at. */
const LOOK_ZOOM = 4;

/** Both pictures, what differs between them one by one, and what nobody has looked at. */
export function DifferencesDesk({ question, result, again }: DifferencesDeskProps) {
  const [strictness, setStrictness] = useState(USUAL_STRICTNESS);
  const [most, setMost] = useState(SLICE);
  const [picked, setPicked] = useState<number | null>(null);
  const held = useState<HeldView>(() => ({
    view: wholeView({ width: result.width_px, height: result.height_px, side: 'front' }),
    side: 'front',
  }));
  const [tool, setTool] = useState<OwnTool | null>(null);
  const likely = atStrictness(result.differences, strictness);
  const shown = likely.slice(0, most);
  const chosen = shown.find(({ rank }) => rank === picked) ?? shown.find(({ verdict }) => verdict === null) ?? null;
  const show = (at: Place): void => held[1]({ side: 'front', view: { ...at, zoom: Math.max(LOOK_ZOOM, held[0].view.zoom) } });
  const choose = (difference: DifferenceView | null): void => {
    setPicked(difference?.rank ?? null);
    if (difference) show(middleOf(difference.outline));
  };
  const step = (by: 1 | -1): void => {
    const at = chosen ? shown.indexOf(chosen) : -1;
    choose(shown[(at + by + shown.length) % shown.length] ?? null);
  };
  const onward = (): void => choose(shown.find(({ rank, verdict }) => verdict === null && rank !== chosen?.rank) ?? null);
  const keys = (event: KeyboardEvent): void => {
    if (event.target instanceof HTMLSelectElement || event.target instanceof HTMLInputElement) return;
    if (event.key === 'j' || event.key === 'k') {
      event.preventDefault();
      step(event.key === 'j' ? 1 : -1);
    }
  };
  return (
    <>
      <Section id="pictures" title="Both boards" aside={<span className="small muted">{madeOf(result)}</span>}>
        <ComparedPictures result={result} shown={shown} chosen={chosen} choose={choose} held={held} tool={tool} />
        <OwnFinding side={question.side} map={result.board_map} tool={tool} setTool={setTool} />
      </Section>
      {/* oxlint-disable-next-line jsx-a11y/no-static-element-interactions -- the keys only repeat what its buttons do */}
      <div className="eyes-columns" onKeyDown={keys}>
        <Section id="differences" title="What differs" aside={<Rejudge shown={result.differences} again={again} />}>
          <Strictness value={strictness} onChange={setStrictness} count={likely.length} of={result.differences.length} />
          {chosen && <DifferenceCard key={chosen.rank} question={question} difference={chosen} step={step} onward={onward} />}
          <DifferenceList shown={shown} chosen={chosen} choose={choose} />
          {likely.length > shown.length && (
            <button type="button" onClick={() => setMost(most + SLICE)}>
              Show the next ten
            </button>
          )}
          {likely.length === 0 && (
            <p>Nothing is likely enough to be shown at this strictness. That is no proof that nothing is wrong: look yourself, too.</p>
          )}
        </Section>
        <BlindZones result={result} show={show} />
      </div>
    </>
  );
}

export function middleOf(outline: readonly (readonly [number, number])[]): { x: number; y: number } {
  const mean = (axis: 0 | 1): number => outline.reduce((sum, spot) => sum + spot[axis], 0) / outline.length;
  return { x: mean(0), y: mean(1) };
}

const madeOf = ({ references, variations }: DifferencesDeskProps['result']): string =>
  `against ${counted(references, 'photo')} of good boards${variations > 0 ? `, ${counted(variations, 'known variation')}` : ''}`;

interface StrictnessProps {
  readonly value: number;
  readonly onChange: (value: number) => void;
  readonly count: number;
  readonly of: number;
}

/** Between few and all. */
function Strictness({ value, onChange, count, of }: StrictnessProps) {
  return (
    <label className="eyes-slider">
      <span>
        How strict: {count} of {counted(of, 'place')} shown
      </span>
      <input type="range" min={0} max={1} step={0.05} value={value} onChange={(event) => onChange(Number(event.target.value))} />
      <span className="eyes-ends small muted">
        <span>all</span>
        <span>only what is all but sure</span>
      </span>
    </label>
  );
}

/** Something was called normal: the next comparison knows it. */
function Rejudge({ shown, again }: { readonly shown: readonly DifferenceView[]; readonly again: () => void }) {
  if (!shown.some(({ verdict }) => verdict === 'normal')) return null;
  return (
    <button type="button" onClick={again}>
      Compare again with what is normal
    </button>
  );
}
