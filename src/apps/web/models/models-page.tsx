import { Link } from 'wouter';
import { useModels } from '../api/queries.ts';
import { counted } from '../format/number.ts';
import { LEVEL_WORDS } from './level-words.ts';
import { Answer } from '../ui/answer.tsx';
import { modelTitle } from '../ui/model-options.ts';
import { useTitle } from '../ui/use-title.ts';

/** The device models that this bench knows. */
export default function ModelsPage() {
  const models = useModels();
  useTitle('Models');
  return (
    <>
      <header className="page-head">
        <h1>Models</h1>
        <p className="lead">
          What is known of a device and its boards. Each stands in a file of the folder models, or grows here from what you tell it.
        </p>
        <p className="row">
          <Link href="/models/new" className="button main">
            New model
          </Link>
          <Link href="/calculators">Calculators for tracks, wires, marks of parts, batteries</Link>
        </p>
      </header>
      <Answer query={models}>
        {(rows) => (
          <ul className="plain-list model-list">
            {rows.map((model) => (
              <li key={model.id} className="sheet">
                <h2>
                  <Link href={`/models/${encodeURIComponent(model.id)}`}>{modelTitle(model)}</Link>
                </h2>
                <p>{model.about}</p>
                <p className="small muted">
                  Level {model.level}: {LEVEL_WORDS[model.level]} · {counted(model.units, 'unit')} here
                  {model.version !== null && ` · grows here, version ${model.version}`}
                  {model.points > 0 && ` · ${model.referenced_points} of ${model.points} points measured on good boards`}
                </p>
              </li>
            ))}
          </ul>
        )}
      </Answer>
    </>
  );
}
