import { useEffect, useMemo, useState } from 'react';
import type { BoardSide } from '../../../bench/events/index.ts';
import { GhostSlider } from './ghost-camera.tsx';
import { useVerdict } from './use-verdict.ts';
import { VerdictCard } from './verdict-card.tsx';

interface TakenPhotoProps {
  readonly photo: File;
  readonly ghost: string | null;
  readonly modelId: string;
  readonly side: BoardSide;
  readonly sending: boolean;
  readonly keep: () => void;
  readonly again: () => void;
}

/** A photo that was just taken, with what is good and bad about it, to be kept or taken again. */
export function TakenPhoto({ photo, ghost, modelId, side, sending, keep, again }: TakenPhotoProps) {
  const [strength, setStrength] = useState(0);
  const url = useMemo(() => URL.createObjectURL(photo), [photo]);
  useEffect(() => () => URL.revokeObjectURL(url), [url]);
  const verdict = useVerdict(photo, modelId, side);
  return (
    <>
      <div className="capture-stage">
        <img className="capture-taken" src={url} alt="What you took" />
        {ghost && <img className="capture-ghost" src={ghost} alt="" style={{ opacity: strength }} />}
      </div>
      {ghost && <GhostSlider value={strength} onChange={setStrength} />}
      <VerdictCard verdict={verdict} />
      <div className="row">
        <button type="button" className={verdict.isGood === false ? '' : 'main'} disabled={sending} onClick={keep}>
          Keep it
        </button>
        <button type="button" className={verdict.isGood === false ? 'main' : ''} disabled={sending} onClick={again}>
          Take it again
        </button>
      </div>
    </>
  );
}
