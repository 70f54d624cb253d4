import { hostname, networkInterfaces } from 'node:os';
import type { OwnNames } from './certificate.ts';

/** How this machine is reached from its own network; private IPv4 addresses first, for those are what a phone can use. */
export function ownNames(): OwnNames {
  const addresses = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ internal, scopeid }) => !internal && !scopeid)
    .map(({ address }) => address)
    .sort((a, b) => Number(isPrivate(b)) - Number(isPrivate(a)));
  const name = hostname().toLowerCase();
  const names = /^[a-z0-9][a-z0-9-]*$/.test(name) ? [name, `${name}.local`] : [];
  return { names: ['localhost', ...names], addresses: [...new Set(addresses)] };
}

/** Addresses of home networks (RFC 1918). */
const isPrivate = (address: string): boolean => /^(?:10\.|192\.168\.|172\.(?:1[6-9]|2\d|3[01])\.)/.test(address);
