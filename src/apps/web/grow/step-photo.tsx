import type { LoadedPhoto } from '../fit/use-photo.ts';
import { useKeptPhoto } from './use-kept-photo.ts';

interface StepPhotoProps {
  readonly hash: string;
  readonly places: readonly (readonly [number, number])[];
  readonly title: string;
}

/** A ring takes this share of the width of the photo. */
const RING_SHARE = 0.018;

/** The photo of a recorded step, with a numbered ring at each place. */
export function StepPhoto({ hash, places, title }: StepPhotoProps) {
  const photo = useKeptPhoto(hash);
  return photo && <Rings photo={photo} places={places} title={title} />;
}

function Rings({ photo, places, title }: Omit<StepPhotoProps, 'hash'> & { readonly photo: LoadedPhoto }) {
  const r = RING_SHARE * photo.width;
  return (
    <svg
      className="step-picture"
      viewBox={`0 0 ${photo.width} ${photo.height}`}
      role="img"
      aria-label={`${title}: ${places.length} places on the photo`}
    >
      <image href={photo.url} width={photo.width} height={photo.height} />
      {places.map(([x, y], i) => (
        // oxlint-disable-next-line react/no-array-index-key -- places have no name, and their order is what they are
        <g key={i}>
          <circle className="step-ring" cx={x} cy={y} r={r} strokeWidth={r / 4} />
          <text className="mark-name" x={x} y={y} fontSize={r} strokeWidth={r / 4}>
            {i + 1}
          </text>
        </g>
      ))}
    </svg>
  );
}
