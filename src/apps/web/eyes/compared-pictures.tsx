import { useEffect, useState } from 'react';
import type { ComparisonView, DifferenceView } from '../../../bench/views/index.ts';
import type { HeldView } from '../board/use-pan-zoom.ts';
import { Chips } from '../ui/chips.tsx';
import { differenceAt, MarksOnPhoto } from './marks-on-photo.tsx';
import { PhotoPane } from './photo-pane.tsx';
import type { OwnTool } from './own-finding.tsx';

interface ComparedPicturesProps {
  readonly result: NonNullable<ComparisonView['result']>;
  readonly shown: readonly DifferenceView[];
  readonly chosen: DifferenceView | null;
  readonly choose: (difference: DifferenceView | null) => void;
  /** What is in the window, of all pictures at once. */
  readonly held: readonly [HeldView, (held: HeldView) => void];
  readonly tool: OwnTool | null;
}

const WAYS = [
  { value: 'side', label: 'Side by side' },
  { value: 'swipe', label: 'Swipe' },
  { value: 'blink', label: 'Blink' },
] as const;
type Way = (typeof WAYS)[number]['value'];

/** The reference and the photo as it lies on it: side by side with one view for both, one over the other, or in turn. */
export function ComparedPictures(pair: ComparedPicturesProps) {
  const [way, setWay] = useState<Way>('side');
  const { reference_url: reference, laid_url: laid } = pair.result;
  return (
    <div className="form">
      <Chips legend="How to look" options={WAYS} value={way} onChange={setWay} />
      {way === 'side' && (
        <div className="eyes-pair">
          <MarkedPane pair={pair} name="Good board" pictures={[{ url: reference, share: 1 }]} />
          <MarkedPane pair={pair} name="This board" pictures={[{ url: laid, share: 1 }]} />
        </div>
      )}
      {way === 'swipe' && <Swipe pair={pair} />}
      {way === 'blink' && <InTurn pair={pair} />}
    </div>
  );
}

interface OfPair {
  readonly pair: ComparedPicturesProps;
}

function MarkedPane({ pair, name, pictures }: OfPair & Pick<Parameters<typeof PhotoPane>[0], 'name' | 'pictures'>) {
  const { result, shown, chosen, choose, held, tool } = pair;
  return (
    <PhotoPane
      frame={{ width: result.width_px, height: result.height_px, side: 'front' }}
      held={held}
      name={name}
      title={`${name}, with ${shown.length} differences outlined`}
      pictures={pictures}
      onTap={tool ? tool.tap : (at) => choose(differenceAt(shown, at))}
      onDrag={tool?.drag ?? null}
      renderMarks={(unit) => <MarksOnPhoto zones={result.zones} shown={shown} chosen={chosen} drawn={tool?.drawn ?? null} unit={unit} />}
    />
  );
}

function Swipe({ pair }: OfPair) {
  const [share, setShare] = useState(0.5);
  const { reference_url: reference, laid_url: laid } = pair.result;
  const pictures = [
    { url: laid, share: 1 },
    { url: reference, share },
  ];
  return (
    <>
      <MarkedPane pair={pair} name="Good board at the left, this board at the right" pictures={pictures} />
      <label className="eyes-slider">
        <span>How far the good board reaches</span>
        <input type="range" min={0} max={1} step={0.01} value={share} onChange={(event) => setShare(Number(event.target.value))} />
      </label>
    </>
  );
}

/** Slower than three flashes a second by far (WCAG 2.3.1). */
const BLINK_MS = 900;

/** Both in turn, by themselves or by hand; they begin at rest. */
function InTurn({ pair }: OfPair) {
  const [isOn, setIsOn] = useState(false);
  const [isOther, setIsOther] = useState(true);
  const { reference_url: reference, laid_url: laid } = pair.result;
  useEffect(() => {
    if (!isOn) return undefined;
    const timer = setInterval(() => setIsOther((before) => !before), BLINK_MS);
    return () => clearInterval(timer);
  }, [isOn]);
  const pictures = [
    { url: reference, share: 1 },
    { url: laid, share: isOther ? 1 : 0 },
  ];
  const turn = (): void => {
    setIsOn(false);
    setIsOther(!isOther);
  };
  return (
    <>
      <MarkedPane pair={pair} name={isOther ? 'This board' : 'Good board'} pictures={pictures} />
      <div className="row">
        <button type="button" aria-pressed={isOn} onClick={() => setIsOn(!isOn)}>
          {isOn ? 'Hold still' : 'Blink by itself'}
        </button>
        <button type="button" onClick={turn}>
          Show the other
        </button>
      </div>
    </>
  );
}
