/** The power states that a point of a model file names, in words. */
export const POWER_WORDS = { off: 'power off, battery out', battery: 'on battery', charger: 'on the charger' } as const;
