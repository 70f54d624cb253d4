/** Magnitudes of the first half of the discrete Fourier transform of real samples, whose number must be a power of two. Cooley and Tukey (1965), radix 2. */
export function spectrum(samples: Float64Array): Float64Array {
  const n = samples.length;
  const re = Float64Array.from(samples, (_, i) => samples[reversed(i, n)]!);
  const im = new Float64Array(n);
  for (let size = 2; size <= n; size *= 2) {
    for (let k = 0; k < size / 2; k++) {
      const [cos, sin] = [Math.cos((-2 * Math.PI * k) / size), Math.sin((-2 * Math.PI * k) / size)];
      for (let i = k; i < n; i += size) {
        const j = i + size / 2;
        const [tr, ti] = [re[j]! * cos - im[j]! * sin, re[j]! * sin + im[j]! * cos];
        [re[j], im[j]] = [re[i]! - tr, im[i]! - ti];
        [re[i], im[i]] = [re[i]! + tr, im[i]! + ti];
      }
    }
  }
  return Float64Array.from({ length: n / 2 }, (_, i) => Math.hypot(re[i]!, im[i]!));
}

function reversed(i: number, n: number): number {
  let out = 0;
  for (let bit = 1; bit < n; bit *= 2) out = (out << 1) | ((i & bit) === 0 ? 0 : 1);
  return out;
}
