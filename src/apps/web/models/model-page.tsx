import { Link } from 'wouter';
import { useModel, type ModelPage as ModelAnswer } from '../api/queries.ts';
import { money } from '../format/money.ts';
import { FitsSection } from '../grow/fits-section.tsx';
import { FromWhere } from '../grow/from-where.tsx';
import { CopyLink, GrowthHead } from '../grow/growth-head.tsx';
import { GrownModel } from '../grow/grown-model.tsx';
import { KnownGood } from '../grow/known-good.tsx';
import { ShareSection } from '../grow/share-section.tsx';
import { TellMore } from '../grow/tell-more.tsx';
import { ModelMarket } from '../market/model-market.tsx';
import { Answer } from '../ui/answer.tsx';
import { Section } from '../ui/section.tsx';
import { modelTitle } from '../ui/model-options.ts';
import { useTitle } from '../ui/use-title.ts';
import { LEVEL_WORDS } from './level-words.ts';
import { ModelBoard } from './model-board.tsx';
import { ModelPlacedBoard } from './model-placed-board.tsx';
import { ModelFaults } from './model-faults.tsx';
import { ModelPoints } from './model-points.tsx';
import { ModelSteps } from './model-steps.tsx';
import { ModelWork } from './model-work.tsx';

/** All that is known of one model. */
export default function ModelPage({ id }: { readonly id: string }) {
  const model = useModel(id);
  useTitle(model.data?.file.name ?? 'Model');
  return (
    <Answer query={model}>
      {(answer) => (
        <GrownModel id={answer.file.id}>
          <ModelSheet answer={answer} />
        </GrownModel>
      )}
    </Answer>
  );
}

function ModelSheet({ answer }: { readonly answer: ModelAnswer }) {
  const { file, readings, photos, parts } = answer;
  return (
    <>
      <header className="page-head">
        <p className="small">
          <Link href="/models">All models</Link>
        </p>
        <h1>{modelTitle(file)}</h1>
        <p className="small muted">
          Level {file.level}: {LEVEL_WORDS[file.level]}
        </p>
        <p className="lead">{file.about}</p>
        <p className="small">
          <CopyLink id={file.id} />
        </p>
        <p>
          <Link href={`/models/${encodeURIComponent(file.id)}/check`}>What this model can and cannot do now</Link>
        </p>
      </header>
      <GrowthHead blocks={file.blocks} />
      <Section id="prices" title="Prices">
        <dl className="figures">
          <div>
            <dt>A working one</dt>
            <dd>
              {money(file.prices.working, file.currency)} <FromWhere section="head" id="prices" field="working" />
              <small>
                2 in 3 within {money(Math.round(file.prices.working / Math.exp(file.prices.spread)), file.currency)} to{' '}
                {money(Math.round(file.prices.working * Math.exp(file.prices.spread)), file.currency)}
              </small>
            </dd>
          </div>
          <div>
            <dt>A faulty one</dt>
            <dd>
              {money(file.prices.for_parts, file.currency)} <FromWhere section="head" id="prices" field="for_parts" />
            </dd>
          </div>
          {file.cell !== undefined && (
            <div>
              <dt>Cell</dt>
              <dd>
                {file.cell.volts} V <FromWhere section="head" id="cell" />
                <small>{file.cell.chemistry}</small>
              </dd>
            </div>
          )}
        </dl>
      </Section>
      <ModelMarket modelId={file.id} />
      {file.board !== undefined && parts.length > 0 ? (
        <ModelPlacedBoard file={file} board={file.board} parts={parts} />
      ) : (
        <ModelBoard file={file} />
      )}
      {photos.length > 0 && (
        <Section id="photos" title="Photos of a good one">
          <ul className="thumbs wide">
            {photos.map((photo) => (
              <li key={photo.url}>
                <a href={photo.url}>
                  <img src={photo.url} alt={`A good ${file.name}: ${photo.side.replaceAll('-', ', ')}`} loading="lazy" />
                </a>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <ModelFaults file={file} />
      <ModelPoints file={file} readings={readings} />
      <KnownGood />
      <TellMore file={file} />
      <ShareSection />
      <ModelWork file={file} />
      <FitsSection file={file} />
      <ModelSteps file={file} />
    </>
  );
}
