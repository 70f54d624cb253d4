import { z } from 'zod';

const Health = z.object({ name: z.literal('salvor'), home: z.string() });

/**
 * What to say when a port is in use: the address when a Salvor answers there on the same folder (`isSame`), else what to do.
 * `ask` gets the parsed JSON of an address, or throws.
 */
export async function portTaken(
  port: number,
  home: string,
  ask: (url: string) => Promise<unknown>,
): Promise<{ readonly isSame: boolean; readonly sentence: string; readonly url: string }> {
  const url = `http://127.0.0.1:${port}/`;
  const health = Health.safeParse(await ask(`${url}health`).catch(() => undefined));
  const other = `Start this one with another port: npm start -- --port ${port === 65_535 ? port - 1 : port + 1}`;
  if (!health.success) return { isSame: false, url, sentence: `Port ${port} is in use by another program. ${other}` };
  if (health.data.home === home) return { isSame: true, url, sentence: `Salvor is already open on this bench at ${url}` };
  return { isSame: false, url, sentence: `Port ${port} is in use by a Salvor on another bench (${health.data.home}). ${other}` };
}

/** The parsed JSON of an address on this machine; throws when nothing answers soon. */
export async function askJson(url: string): Promise<unknown> {
  const response = await fetch(url, { signal: AbortSignal.timeout(2000) });
  return response.json();
}
