import { useDrawer } from '../api/queries.ts';
import { FitSection } from '../fit/fit-section.tsx';
import { LazyFold } from '../ui/lazy-fold.tsx';
import type { EditorPart } from './editor-part.ts';
import { placeOf } from './place-pattern.ts';

/** Which parts go on the pads of a marked part: those of the drawer, of files, drawings and lists. */
export function FitHere({ part }: { readonly part: EditorPart }) {
  return (
    <LazyFold title={`Which parts fit at ${part.ref}?`}>
      {part.pins.length > 0 && (
        <p className="small muted">
          Its pins were marked by their middles: pads are taken as half as wide as the pins are apart. Measure them on a photo where it is
          close.
        </p>
      )}
      <Laid part={part} />
    </LazyFold>
  );
}

function Laid({ part }: { readonly part: EditorPart }) {
  const bags = useDrawer().data?.bags ?? [];
  return <FitSection key={JSON.stringify(part)} bags={bags} at={{ name: part.ref, pattern: placeOf(part) }} />;
}
