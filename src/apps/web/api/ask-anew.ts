import type { Query, QueryClient } from '@tanstack/react-query';
import type { ModelPage } from './queries.ts';

/** Answers that no event changes, since they stand in files or come from circuits; but for models that grow here. */
const STILL: ReadonlySet<unknown> = new Set(['model', 'points', 'nets']);
const ITEM = ['item'];

const isStill = (client: QueryClient, { queryKey: [first, id] }: Query): boolean => STILL.has(first) && !growsHere(client, id);
const growsHere = (client: QueryClient, id: unknown): boolean =>
  typeof client.getQueryData<Pick<ModelPage, 'version'>>(['model', id])?.version === 'number';
const isItem = ({ queryKey: [first] }: Query): boolean => first === ITEM[0];

/**
 * Asks what is shown anew after the log has grown. The unit on the bench comes first and by itself, for the person waits for it; resolves when it is there, or,
 * on a page without one, when all is there.
 */
export async function askAnew(client: QueryClient): Promise<void> {
  const isOnBench = client.getQueryCache().findAll({ queryKey: ITEM, type: 'active' }).length > 0;
  if (isOnBench) await client.invalidateQueries({ queryKey: ITEM });
  const others = client.invalidateQueries({ predicate: (query) => !isStill(client, query) && !(isOnBench && isItem(query)) });
  if (!isOnBench) await others;
}

/** Asks anew after more of a circuit became known: for all but the files of models, with the points that can be measured now. */
export const askOfBoards = (client: QueryClient): Promise<void> =>
  client.invalidateQueries({ predicate: ({ queryKey: [first] }) => first !== 'model' });
