import { useQuery } from '@tanstack/react-query';
import type { Role } from '../../../bench/ports.ts';
import { ask, askWith } from './ask.ts';

export interface Me {
  readonly name: string | null;
  readonly role: Role;
  readonly door: 'here' | 'network';
}

export interface DevicesView {
  readonly devices: readonly {
    readonly id: string;
    readonly name: string;
    readonly role: Role;
    readonly joined_at: string;
    readonly last_seen_at: string | null;
  }[];
  readonly network: { readonly urls: readonly string[]; readonly fingerprint: string } | null;
}

export interface Invitation {
  readonly expires_at: string;
  readonly links: readonly { readonly url: string; readonly qr_svg: string }[];
}

/** Who this device is to the bench. */
export const useMe = () => useQuery({ queryKey: ['me'], queryFn: ({ signal }) => ask<Me>('/api/me', { signal }) });

export const useDevices = () => useQuery({ queryKey: ['devices'], queryFn: ({ signal }) => ask<DevicesView>('/api/devices', { signal }) });

export const inviteDevice = (role: Role): Promise<Invitation> => askWith('/api/devices/invites', { role });

export const revokeDevice = (name: string): Promise<unknown> => askWith('/api/devices/revoke', { name });

export const joinBench = (secret: string, name: string): Promise<Me> => askWith('/api/join', { secret, name });
