import { useEffect, useState } from 'react';
import { counted } from '../format/number.ts';
import { Section } from '../ui/section.tsx';

/** Counts presses of keys and of the buttons of a game pad that is plugged into this device: a key that bounces counts twice. */
export function KeyTester() {
  const [on, setOn] = useState(false);
  const [pressed, setPressed] = useState<ReadonlyMap<string, number>>(new Map());
  useEffect(() => {
    if (!on) return undefined;
    const note = (name: string): void => setPressed((before) => new Map(before).set(name, (before.get(name) ?? 0) + 1));
    const key = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') return setOn(false);
      if (event.key !== 'Tab') event.preventDefault();
      if (!event.repeat) note(event.code || event.key);
    };
    const pads = watchPads(note);
    window.addEventListener('keydown', key);
    return () => {
      window.removeEventListener('keydown', key);
      pads();
    };
  }, [on]);
  return (
    <Section id="keys" title="Keys">
      <p className="small">
        For devices with keys that plug into this one. Press each key once and slowly: one that counts twice bounces, one that does not show
        is dead.
      </p>
      <div className="row">
        <button type="button" aria-pressed={on} onClick={() => setOn(!on)}>
          {on ? 'Stop (Escape)' : 'Watch the keys'}
        </button>
        <button type="button" onClick={() => setPressed(new Map())}>
          Begin anew
        </button>
      </div>
      <ul className="lines" aria-label="Keys pressed" aria-live="polite">
        {[...pressed].map(([name, count]) => (
          <li key={name}>
            {name}: {counted(count, 'press', 'presses')}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** Game pads are asked picture by picture, for they tell nothing by themselves. */
function watchPads(note: (name: string) => void): () => void {
  const down = new Set<string>();
  let frame = 0;
  const look = (): void => {
    for (const pad of navigator.getGamepads?.() ?? [])
      pad?.buttons.forEach((button, i) => {
        const name = `Pad ${pad.index + 1}, button ${i + 1}`;
        if (button.pressed && !down.has(name)) note(name);
        if (button.pressed) down.add(name);
        else down.delete(name);
      });
    frame = requestAnimationFrame(look);
  };
  look();
  return () => cancelAnimationFrame(frame);
}
