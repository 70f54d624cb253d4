import type { Network } from './app-parts.ts';

/** The network side of a bench that answers on a port, under the names and addresses of its machine. */
export function networkAt(
  port: number,
  own: { readonly names: readonly string[]; readonly addresses: readonly string[] },
  fingerprint: string,
): Network {
  const named = own.addresses.map((address) => (address.includes(':') ? `[${address}]` : address));
  const hosts = new Set([...named, ...own.names].map((host) => host.toLowerCase()));
  const reached = named.length > 0 ? named : own.names;
  return { urls: reached.map((host) => `https://${host}:${port}/`), hosts, fingerprint };
}

/** What to say once the door is open, so that a person can compare the certificate that a phone shows. */
export const doorWords = ({ urls, fingerprint }: Network, isNew: boolean): string =>
  [
    `Devices of this network reach it at ${urls.join(' or ')}; let them join under Settings, Devices.`,
    `${isNew ? 'Its certificate is new' : 'Its certificate'}: SHA-256 ${fingerprint}`,
  ].join('\n');
