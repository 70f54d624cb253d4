import { useMutation, useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { BoardSide } from '../../../bench/events/index.ts';
import type { ComparisonView, JudgementView, JudgeQuestion, PhotoQuestion, ReferencesView } from '../../../bench/views/index.ts';
import { ask, askWith } from './ask.ts';

const ASK_AGAIN_MS = 700;

export interface ComparisonOnPage {
  readonly view: ComparisonView | undefined;
  readonly error: Error | null;
  /** Compares again, with what was learned since. */
  readonly again: () => void;
  readonly stop: () => void;
}

/** A comparison that is begun with the page, and asked of until it has ended. */
export function useComparison(question: PhotoQuestion): ComparisonOnPage {
  const { item_id, photo, side } = question;
  const start = useMutation({ mutationFn: (asked: PhotoQuestion) => askWith<ComparisonView>('/api/comparisons', asked) });
  const { mutate } = start;
  useEffect(() => mutate({ item_id, photo, side }), [mutate, item_id, photo, side]);
  const key = start.data?.key;
  const progress = useQuery({
    queryKey: ['comparison', key],
    enabled: key !== undefined,
    queryFn: ({ signal }) => ask<ComparisonView>(`/api/comparisons/${key}`, { signal }),
    refetchInterval: ({ state: { data } }) => (data?.stage === 'waiting' || data?.stage === 'working' ? ASK_AGAIN_MS : false),
  });
  const stop = useMutation({
    mutationFn: () => askWith<ComparisonView>(`/api/comparisons/${key}/stop`, {}),
    onSuccess: () => progress.refetch(),
  });
  return {
    view: key === undefined || start.isPending ? undefined : (progress.data ?? start.data),
    error: start.error ?? progress.error,
    again: () => mutate(question),
    stop: () => stop.mutate(),
  };
}

/** Photos of good boards of a model that others are compared with. */
export const useReferences = (modelId: string) =>
  useQuery({
    queryKey: ['references', modelId],
    queryFn: ({ signal }) => ask<ReferencesView>(`/api/models/${encodeURIComponent(modelId)}/references`, { signal }),
  });

export const referencesOfSide = (view: ReferencesView, side: BoardSide) => view.sides.find((each) => each.side === side)?.references ?? [];

/** How a photo was taken that the bench holds already. */
export const judgePhoto = (question: JudgeQuestion): Promise<JudgementView> => askWith<JudgementView>('/api/comparisons/judge', question);
