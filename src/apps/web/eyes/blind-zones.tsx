import type { BlindZone, ComparisonView } from '../../../bench/views/index.ts';
import { counted } from '../format/number.ts';
import { Section } from '../ui/section.tsx';

interface BlindZonesProps {
  readonly result: NonNullable<ComparisonView['result']>;
  readonly show: (at: { readonly x: number; readonly y: number }) => void;
}

const REASONS: Readonly<Record<BlindZone['reason'], string>> = {
  'not-seen': 'Not on the photo',
  glare: 'Blinded by a highlight',
  'does-not-fit': 'Does not lie on the reference: hidden, or another thing',
};

/** Where nothing was compared, and how the photo could be taken better. */
export function BlindZones({ result: { zones, pose, parallax_px: parallax, advice }, show }: BlindZonesProps) {
  return (
    <Section id="look-yourself" title="Look here yourself">
      {zones.length === 0 ? <p>All of the board was compared.</p> : <p>These places were not compared. They are hatched on the picture.</p>}
      <ul className="eyes-list">
        {zones.map((zone) => (
          <li key={zone.squares[0]!.join()}>
            <button type="button" onClick={() => show(middleOf(zone))}>
              <span>
                {REASONS[zone.reason]}
                {zone.parts.length > 0 && `: ${zone.parts.join(', ')}`}
              </span>
              <span className="small muted">{counted(zone.squares.length, 'square')}</span>
            </button>
          </li>
        ))}
      </ul>
      <p className="small">
        The camera stood {pose.tilt_deg}° aslant to where it stood for the reference
        {parallax !== null && `; the top of a part of 3 mm is seen about ${Math.round(parallax)} px beside its foot`}.
        {advice.length > 0 && ` For a better comparison: ${advice.join('; ')}.`}
      </p>
    </Section>
  );
}

function middleOf({ squares }: BlindZone): { x: number; y: number } {
  const [left, top, right, bottom] = squares[Math.floor(squares.length / 2)]!;
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}
