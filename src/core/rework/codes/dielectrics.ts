/** How far a ceramic's capacitance moves within its temperatures, as shares; EIA-198, from memory. */
export const DIELECTRICS = {
  C0G: { lowC: -55, highC: 125, below: 0.003, above: 0.003 },
  X7R: { lowC: -55, highC: 125, below: 0.15, above: 0.15 },
  X5R: { lowC: -55, highC: 85, below: 0.15, above: 0.15 },
  Y5V: { lowC: -30, highC: 85, below: 0.82, above: 0.22 },
} as const;
