import type { Verdict } from './use-verdict.ts';

const HEADS = { good: 'Good: keep it', again: 'Take it again', looking: 'Looking at it …' } as const;

/** How a photo was taken, with each number and what to do better. */
export function VerdictCard({ verdict: { quality, judged, isAlone, isGood, advice } }: { readonly verdict: Verdict }) {
  const head = isGood === null ? HEADS.looking : isGood ? HEADS.good : HEADS.again;
  return (
    <section className="spot" aria-label="How it was taken" aria-live="polite">
      <h3>{head}</h3>
      {advice.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <dl className="eyes-facts">
        {quality && <Fact name="Sharpness" value={`${Math.round(quality.sharpness * 100)} of 100, 33 is enough`} />}
        {quality && <Fact name="Brightness" value={`${quality.brightness} of 255, 35 to 205 is good`} />}
        {judged?.pose && <Fact name="Angle to the reference" value={`${judged.pose.tilt_deg}° ± 1°, up to 4° is good`} />}
        {judged?.pose && <Fact name="Turned" value={`${Math.abs(Math.round(judged.pose.turn_deg))}°`} />}
        {typeof judged?.parallax_px === 'number' && (
          <Fact name="Top of a part of 3 mm" value={`seen about ${Math.round(judged.parallax_px)} px beside its foot`} />
        )}
      </dl>
      {judged?.verdict === 'alone' && <p className="small">There is no photo of a good board yet, so its angle cannot be told.</p>}
      {isAlone && <p className="small">The bench does not answer, so its angle cannot be told now. The photo can be kept all the same.</p>}
      {!judged && !isAlone && <p className="small waiting-words">Laying it on the reference …</p>}
    </section>
  );
}

function Fact({ name, value }: { readonly name: string; readonly value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
