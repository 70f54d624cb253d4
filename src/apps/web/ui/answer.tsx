import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { sentenceOf } from '../api/problem-error.ts';

interface AnswerProps<T> {
  readonly query: UseQueryResult<T, Error>;
  readonly children: (data: T) => ReactNode;
}

/** Shows an answer of the bench once it is there; meanwhile that it is coming, or why not, with a retry. */
export function Answer<T>({ query, children }: AnswerProps<T>) {
  if (query.data !== undefined) return <>{children(query.data)}</>;
  if (query.isError) return <Trouble error={query.error} retry={() => void query.refetch()} />;
  return <output className="waiting">Asking the bench …</output>;
}

export function Trouble({ error, retry }: { readonly error: unknown; readonly retry: () => void }) {
  return (
    <div className="trouble" role="alert">
      <p>{sentenceOf(error)}</p>
      <button type="button" onClick={retry}>
        Try again
      </button>
    </div>
  );
}
