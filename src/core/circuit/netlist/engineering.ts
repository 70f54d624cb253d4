/** Powers of ten of the suffixes; m is milli, meg is mega, whatever the case. */
const EXPONENT: Readonly<Record<string, number>> = { t: 12, g: 9, meg: 6, k: 3, m: -3, u: -6, µ: -6, μ: -6, n: -9, p: -12, f: -15, r: 0 };
const METRES_PER_MIL = 25.4e-6;

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+))(?:e([+-]?\d+))?(meg|mil|[tgkmunpfµμ])?[a-zµμΩω%]*$/i;
const LETTER_AS_POINT = /^(\d+)(meg|[tgkmunpfµμr])(\d+)$/i;

/**
 * The number in "4.7k", "10meg", "1e-9", "100nF", "4k7" (the letter as the point, as parts are marked, IEC 60062), or undefined.
 * Suffixes are those of SPICE; letters after the suffix are a unit and are ignored. The result is the nearest number to what is written.
 */
export function parseEngineering(text: string): number | undefined {
  const marked = LETTER_AS_POINT.exec(text);
  if (marked) return Number(`${marked[1]}.${marked[3]}e${EXPONENT[marked[2]!.toLowerCase()]!}`);
  const match = NUMBER.exec(text);
  if (!match) return undefined;
  const suffix = match[3]?.toLowerCase();
  const exponent = Number(match[2] ?? 0) + (suffix === undefined || suffix === 'mil' ? 0 : EXPONENT[suffix]!);
  const value = Number(`${match[1]}e${exponent}`) * (suffix === 'mil' ? METRES_PER_MIL : 1);
  return Number.isFinite(value) ? value : undefined;
}
