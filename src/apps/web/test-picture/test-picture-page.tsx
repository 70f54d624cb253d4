import { useEffect, useRef, useState } from 'react';
import { Section } from '../ui/section.tsx';
import { useTitle } from '../ui/use-title.ts';
import { KeyTester } from './key-tester.tsx';

const PICTURES = ['white', 'black', 'red', 'green', 'blue', 'grey', 'stripes', 'checks', 'ramp'] as const;
type Picture = (typeof PICTURES)[number];

/** Pictures all over the screen of this device, to look at and to compare with, and a test of keys. */
export default function TestPicturePage() {
  useTitle('Test pictures');
  const [shown, setShown] = useState<Picture | null>(null);
  return (
    <>
      <h1>Test pictures</h1>
      <p className="lead">
        Each fills the whole screen of this phone or computer. Lay it beside the device and compare, or look at this screen itself: for dead
        dots on colours, for light that leaks on black, for stains on white.
      </p>
      <Section id="pictures" title="Pictures">
        <div className="big-answers">
          {PICTURES.map((picture) => (
            <button key={picture} type="button" onClick={() => setShown(picture)}>
              {picture[0]!.toUpperCase() + picture.slice(1)}
            </button>
          ))}
        </div>
      </Section>
      <KeyTester />
      {shown && <FullPicture picture={shown} onPicture={setShown} />}
    </>
  );
}

/** One picture; a tap, the space bar or the arrow to the right goes on, the arrow to the left back, Escape leaves. */
function FullPicture({ picture, onPicture }: { readonly picture: Picture; readonly onPicture: (picture: Picture | null) => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current!;
    element.showModal();
    void element.requestFullscreen?.().catch(() => undefined);
    return () => {
      if (document.fullscreenElement) void document.exitFullscreen().catch(() => undefined);
    };
  }, []);
  const step = (by: number): void => onPicture(PICTURES[(PICTURES.indexOf(picture) + by + PICTURES.length) % PICTURES.length]!);
  return (
    <dialog ref={dialog} className={`full-picture full-${picture}`} aria-label={`Test picture: ${picture}`} onClose={() => onPicture(null)}>
      <button
        type="button"
        className="full-next"
        aria-label={`${picture}. Next picture`}
        onClick={() => step(1)}
        onKeyDown={(event) => {
          if (event.key === 'ArrowRight') step(1);
          if (event.key === 'ArrowLeft') step(-1);
        }}
      />
      <button type="button" className="full-close" onClick={() => dialog.current?.close()}>
        Close
      </button>
    </dialog>
  );
}
