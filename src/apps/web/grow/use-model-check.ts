import { useQuery } from '@tanstack/react-query';
import type { ModelCheckView } from '../../../bench/views/index.ts';
import { ask } from '../api/ask.ts';

const NEXT_PIECE_MS = 150;

/** The check of a model; asked again while the search for mistakes goes on. `goesOn` false leaves it where it is. */
export const useModelCheck = (id: string, goesOn: boolean) =>
  useQuery({
    queryKey: ['model-check', id],
    queryFn: ({ signal }) => ask<ModelCheckView>(`/api/models/${encodeURIComponent(id)}/check`, { signal }),
    refetchInterval: ({ state }) => (goesOn && state.data && state.data.thought < state.data.to_think ? NEXT_PIECE_MS : false),
  });
