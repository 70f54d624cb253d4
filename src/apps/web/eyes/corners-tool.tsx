import { useState } from 'react';
import type { BoardCorners } from '../../../bench/events/index.ts';
import type { Place } from '../board/frame.ts';
import { PhotoPane } from './photo-pane.tsx';
import { useImageSize } from './use-image-size.ts';

interface CornersToolProps {
  readonly url: string;
  readonly back: boolean;
  readonly done: (corners: BoardCorners) => void;
  readonly leave: () => void;
}

const CORNERS = ['lower left', 'lower right', 'upper right', 'upper left'] as const;

/** The four corners of the board on a photo, tapped one after the other. */
export function CornersTool({ url, back, done, leave }: CornersToolProps) {
  const size = useImageSize(url);
  const [spots, setSpots] = useState<readonly (readonly [number, number])[]>([]);
  if (!size) return <output className="waiting">Opening the photo …</output>;
  const next = CORNERS[spots.length];
  const tap = ({ x, y }: Place): void => {
    if (next) setSpots([...spots, [round(x / size.width), round(y / size.width)]]);
  };
  return (
    <div className="form">
      <output>
        {next
          ? `Tap the ${next} corner of the board as you see it${back ? ' from behind' : ''}; where corners are rounded, where its edges would meet.`
          : 'All four corners are marked.'}
      </output>
      <PhotoPane
        frame={{ ...size, side: 'front' }}
        name="Photo to mark"
        title={`The photo with ${spots.length} corners marked`}
        pictures={[{ url, share: 1 }]}
        onTap={tap}
        renderMarks={(unit) =>
          spots.map(([x, y], i) => (
            <circle key={CORNERS[i]} className="mark-spot" cx={x * size.width} cy={y * size.width} r={5 * unit} strokeWidth={1.5 * unit} />
          ))
        }
      />
      <div className="row">
        <button type="button" className="main" disabled={spots.length < 4} onClick={() => done(spots.map(([x, y]) => [x, y]))}>
          Keep the corners
        </button>
        <button type="button" disabled={spots.length === 0} onClick={() => setSpots(spots.slice(0, -1))}>
          Take the last back
        </button>
        <button type="button" className="quiet" onClick={leave}>
          Leave it
        </button>
      </div>
    </div>
  );
}

const round = (share: number): number => Math.round(share * 1e4) / 1e4;
