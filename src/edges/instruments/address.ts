/** The usual port of SCPI over a raw socket. Registered with IANA as scpi-raw. */
const SCPI_RAW = 5025;

/** Host and port of what a person typed; undefined when it is neither a name nor an IP address with or without a port. */
export function addressOf(typed: string): { readonly host: string; readonly port: number } | undefined {
  const text = typed.trim();
  const match = /^(?:\[([0-9a-fA-F:]+)\]|([A-Za-z0-9](?:[A-Za-z0-9.-]{0,252})))(?::(\d{1,5}))?$/.exec(text);
  const host = match?.[1] ?? match?.[2];
  const port = match?.[3] === undefined ? SCPI_RAW : Number(match[3]);
  return host === undefined || port < 1 || port > 65_535 ? undefined : { host, port };
}
