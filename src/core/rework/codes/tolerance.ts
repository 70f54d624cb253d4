/** Share by letter (IEC 60062). */
export const TOLERANCES: Readonly<Record<string, number>> = {
  B: 0.001,
  C: 0.0025,
  D: 0.005,
  F: 0.01,
  G: 0.02,
  J: 0.05,
  K: 0.1,
  M: 0.2,
};

/** pF by letter, for capacitors below 10 pF (IEC 60062; figures from memory). */
export const SMALL_TOLERANCES: Readonly<Record<string, number>> = { B: 0.1e-12, C: 0.25e-12, D: 0.5e-12, F: 1e-12, G: 2e-12 };
