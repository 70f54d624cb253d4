import { Link } from 'wouter';
import type { ModelFile } from '../../../bench/models/index.ts';
import { setFacts } from '../actions/set-fact.ts';
import { useBoardMarks, useGrowth, useModel } from '../api/queries.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { modelTitle } from '../ui/model-options.ts';
import { Section } from '../ui/section.tsx';
import { useTitle } from '../ui/use-title.ts';
import { CopyLink } from './growth-head.tsx';
import { RecordedSteps } from './recorded-steps.tsx';
import { StepForm } from './step-form.tsx';

/** How a device opens, recorded while the first one is opened; it guides the opening of the next. */
export default function RecordOpeningPage({ id }: { readonly id: string }) {
  const model = useModel(id);
  const growth = useGrowth(id);
  const marks = useBoardMarks(id);
  useTitle(model.data ? `Opening of ${model.data.file.name}` : 'Opening');
  return (
    <Answer query={model}>
      {({ file }) => (
        <>
          <header className="page-head">
            <p className="small">
              <Link href={`/models/${encodeURIComponent(id)}`}>{modelTitle(file)}</Link>
            </p>
            <h1>Record how it opens</h1>
            <p className="lead">Note each step as you do it. The next one is opened by these steps, and closed by them backwards.</p>
          </header>
          <Answer query={growth}>
            {(answer) =>
              answer.growth === null ? (
                <p>
                  This model stands in files of the folder models. Its opening can be recorded on a copy. <CopyLink id={id} />
                </p>
              ) : (
                <>
                  <Section id="record" title="The step that you do now">
                    <Inherited file={file} own={ownSteps(answer.growth.places)} />
                    <StepForm file={file} />
                  </Section>
                  <Answer query={marks}>
                    {({ steps }) => <RecordedSteps file={file} own={ownSteps(answer.growth!.places)} photos={steps} />}
                  </Answer>
                </>
              )
            }
          </Answer>
        </>
      )}
    </Answer>
  );
}

/** Steps that were told here, by their ids. */
const ownSteps = (places: readonly { readonly section: string; readonly id: string }[]): ReadonlySet<string> =>
  new Set(places.flatMap(({ section, id }) => (section === 'steps' ? [id] : [])));

/** Steps of any player stand in the way of those of this one: one tap puts them away. */
function Inherited({ file, own }: { readonly file: ModelFile; readonly own: ReadonlySet<string> }) {
  const { record, busy } = useRecorder();
  const steps = file.steps.filter(({ id }) => !own.has(id));
  if (steps.length === 0) return null;
  const away = steps.toReversed().map(({ id }) => ({ section: 'steps' as const, id, value: null }));
  return (
    <div className="notice" role="note">
      <p>
        It inherits {counted(steps.length, 'step')} from what it was begun from: {steps.map(({ name }) => name).join(', ')}. What you record
        comes after them.
      </p>
      <button type="button" disabled={busy} onClick={() => void record(setFacts(file.id, 'inherited steps put away', away))}>
        Put them away: I record all of it
      </button>
    </div>
  );
}
