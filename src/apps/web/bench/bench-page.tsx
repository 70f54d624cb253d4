import { useEffect, useMemo, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ItemFile } from '../../../bench/views/index.ts';
import { ProblemError, sentenceOf } from '../api/problem-error.ts';
import { useBench, useItem, useModel } from '../api/queries.ts';
import { drawnParts, type DrawnPart, type PlacedPart } from '../board/drawn-part.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { BenchDesk } from './bench-desk.tsx';
import { rememberUnit } from './last-unit.ts';
import { UnitContext } from './unit-context.ts';

/** One unit under work. */
export const BenchPage = ({ id }: { readonly id: string }) => (
  <UnitPage id={id}>
    <BenchDesk />
  </UnitPage>
);

interface UnitPageProps {
  readonly id: string;
  readonly children: ReactNode;
}

/** A page about one unit, with all that is known of it and of its model. */
export function UnitPage({ id, children }: UnitPageProps) {
  const item = useItem(id);
  const isUnknown = item.error instanceof ProblemError && !item.error.retriable;
  useEffect(() => rememberUnit(isUnknown ? null : id), [id, isUnknown]);
  if (isUnknown && item.data === undefined) return <NotHere sentence={sentenceOf(item.error)} />;
  return <Answer query={item}>{(file) => <WithModel file={file}>{children}</WithModel>}</Answer>;
}

function WithModel({ file, children }: { readonly file: ItemFile; readonly children: ReactNode }) {
  const model = useModel(file.model.id);
  const bench = useBench();
  useTitle(`#${file.row.number} ${file.row.name}`);
  return (
    <Answer query={bench}>
      {(settings) => (
        <Answer query={model}>
          {(page) => (
            <WithParts parts={page.parts}>
              {(parts) => (
                <UnitContext value={{ file, model: page.file, bench: settings, parts, shipped: page.photos }}>{children}</UnitContext>
              )}
            </WithParts>
          )}
        </Answer>
      )}
    </Answer>
  );
}

/** Draws the parts once for each answer about the model, not for each about the unit. */
function WithParts({ parts, children }: { readonly parts: readonly PlacedPart[]; readonly children: (drawn: DrawnPart[]) => ReactNode }) {
  return children(useMemo(() => drawnParts(parts), [parts]));
}

function NotHere({ sentence }: { readonly sentence: string }) {
  useTitle('Not here');
  return (
    <>
      <h1>This is not on the bench</h1>
      <p>{sentence}</p>
      <p>
        <Link href="/pile" className="button">
          To the pile
        </Link>
      </p>
    </>
  );
}
