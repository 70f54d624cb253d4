import { QueryClient } from '@tanstack/react-query';
import { ProblemError } from './problem-error.ts';

/** Answers stay fresh until the bench says that something changed; only a bench that cannot be reached is asked again by itself. */
export const makeQueryClient = (): QueryClient =>
  new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: 30_000,
        retry: (count, error) => count < 2 && error instanceof ProblemError && error.retriable,
        retryDelay: (count) => 400 * 2 ** count,
      },
    },
  });
