import { LazyFold } from '../ui/lazy-fold.tsx';
import { Section } from '../ui/section.tsx';
import { GiveForm } from './give-form.tsx';
import { useGrown } from './growth-context.ts';
import { MergeForm } from './merge-form.tsx';

/** A model given to others, and what others know taken into it. */
export function ShareSection() {
  const grown = useGrown();
  if (!grown) return null;
  return (
    <Section id="share" title="Share it">
      <div>
        <LazyFold title="Give this model away">
          <GiveForm modelId={grown.growth.model_id} />
        </LazyFold>
        <LazyFold title="Take in what another bench knows of it">
          <MergeForm modelId={grown.growth.model_id} />
        </LazyFold>
      </div>
    </Section>
  );
}
