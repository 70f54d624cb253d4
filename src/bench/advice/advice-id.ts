/** What the person can disagree with, by name: the kind of advice and what it is about, cut to the length of a name. */
export const adviceId = (kind: 'check' | 'remedy' | 'road' | 'prove', name: string): string => `${kind}.${name}`.slice(0, 64);
