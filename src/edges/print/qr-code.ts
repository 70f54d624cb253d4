/** A code that a phone reads: rows of squares, true for dark. */
export type QrCode = readonly (readonly boolean[])[];

/** Squares of light around the code that readers ask for (ISO/IEC 18004, 6.3.8). */
export const QUIET = 4;

/** The code of a text, with 15 % of it to spare for dirt. The library is loaded with the first code. */
export async function qrCode(text: string): Promise<QrCode> {
  const { default: library } = await import('qrcode');
  const { modules } = library.create(text, { errorCorrectionLevel: 'M' });
  return Array.from({ length: modules.size }, (_, row) =>
    Array.from({ length: modules.size }, (__, column) => modules.get(row, column) === 1),
  );
}

/** The code as an SVG element with its quiet zone. */
export function qrSvg(code: QrCode, label: string): string {
  const size = code.length + 2 * QUIET;
  const path = code.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : []))).join('');
  return `<svg class="qr" viewBox="0 0 ${size} ${size}" role="img" aria-label="${label}"><path fill="#fff" d="M0 0h${size}v${size}H0z"/><path d="${path}"/></svg>`;
}
