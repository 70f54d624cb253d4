import { QueryClient } from '@tanstack/react-query';
import { ProblemError } from './problem-error.ts';

/** Answers stay fresh until the bench says that something changed; only a bench that cannot be reached is asked again by itself. */
export const makeQueryClient = (): QueryClient =>
  new QueryClient({
    defaultOptions: {
      queries: {
        // Whether the bench answers is for it to say: a phone without internet may well reach it, and a worker may know the answer.
        networkMode: 'always',
        staleTime: 30_000,
        retry: (count, error) => count < 2 && error instanceof ProblemError && error.retriable,
        retryDelay: (count) => 400 * 2 ** count,
      },
    },
  });
