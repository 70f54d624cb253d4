import type { Change } from './fault.ts';

/** The factor that a change with this spread has, on a board where it is so many standard deviations off what is typical. */
export const severityFactor = (spread: number | undefined, severity: number): number =>
  spread === undefined ? 1 : Math.exp(spread * severity);

/** Changes as one board has them: with the factors and resistances of its severity, and nothing left that varies. */
export function atSeverity(changes: readonly Change[], severity: number): Change[] {
  return changes.map((change): Change => {
    if (change.does !== 'scale' && change.does !== 'bridge' && change.does !== 'join') return change;
    const { spread, ...rest } = change;
    const factor = severityFactor(spread, severity);
    return rest.does === 'scale' ? { ...rest, by: rest.by * factor } : { ...rest, ohm: rest.ohm * factor };
  });
}
