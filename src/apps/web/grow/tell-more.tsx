import type { ModelFile } from '../../../bench/models/index.ts';
import { LazyFold } from '../ui/lazy-fold.tsx';
import { Section } from '../ui/section.tsx';
import { useGrown } from './growth-context.ts';
import { AddPointForm } from './add-point-form.tsx';
import { EntryForm } from './entry-form.tsx';
import { HeadForm } from './head-form.tsx';

/** Forms for what a person knows of a model that grows here. */
export function TellMore({ file }: { readonly file: ModelFile }) {
  if (!useGrown()) return null;
  return (
    <Section id="tell-more" title="Tell more of it">
      <div>
        <LazyFold title="Prices, cell, board, about it">
          <HeadForm file={file} />
        </LazyFold>
        <LazyFold title="A point to measure">
          <AddPointForm file={file} />
        </LazyFold>
        <LazyFold title="Blocks, functions, faults, remedies: rename, change, take away">
          <EntryForm file={file} />
        </LazyFold>
      </div>
    </Section>
  );
}
