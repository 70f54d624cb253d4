import { useQuery } from '@tanstack/react-query';
import type { Problem } from '../../../bench/views/index.ts';
import { ask, askWith } from './ask.ts';

export interface BackupsView {
  readonly folder: string | null;
  readonly nightly: boolean;
  readonly used_folder: string;
  readonly backups: readonly { readonly name: string; readonly made_at: string; readonly events: number; readonly bytes: number }[];
  readonly trouble: Problem | null;
}

export interface TriedBackup {
  readonly name: string;
  readonly events: number;
  readonly photos: number;
  readonly digest: string;
}

export const useBackups = () => useQuery({ queryKey: ['backups'], queryFn: ({ signal }) => ask<BackupsView>('/api/backups', { signal }) });

export const makeBackup = (): Promise<{ readonly tried: TriedBackup }> => ask('/api/backups', { method: 'POST' });

export const tryBackup = (name: string): Promise<TriedBackup> => askWith('/api/backups/try', { name });

export const planBackups = (plan: Pick<BackupsView, 'folder' | 'nightly'>): Promise<unknown> => askWith('/api/backups/plan', plan);
