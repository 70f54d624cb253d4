import { NOTHING_WRONG } from './looking.ts';
import type { Evidence } from './model.ts';

/** Evidence that tells of the state at its time without changing it. */
export type Observation = Exclude<Evidence, { kind: 'remedy' | 'transplant' }>;

/** Observations of the same key are of the same thing; of one stretch only trials come several to a key. */
export function keyOf(piece: Observation): string {
  switch (piece.kind) {
    case 'trial':
      return `try ${piece.function} ${[...piece.with].sort().join(' ')}`;
    case 'finding':
      return `look ${placeOf(piece)} ${piece.sees}`;
    case 'reading':
      return `measure ${piece.point}`;
    case 'not-well':
      return piece.kind;
    case 'claim':
      return `claim ${piece.function} ${piece.says}`;
    case 'claim-place':
      return `claim-place ${piece.block} ${piece.sees}`;
  }
}

/**
 * What still counts of the observations of a time without change, in their order: a newer reading at a point and a newer look at a
 * block replace the older ones, and a claim that is said again adds nothing. Things of several kinds seen at one block
 * stand beside each other, until a look there finds nothing wrong.
 */
export function standing(observed: readonly Observation[]): Observation[] {
  return observed.filter((piece, i) => !observed.some((newer, j) => j > i && replaces(newer, piece)));
}

function replaces(newer: Observation, older: Observation): boolean {
  switch (older.kind) {
    case 'trial':
      return false;
    case 'not-well':
      return newer.kind === 'not-well';
    case 'reading':
      return newer.kind === 'reading' && newer.point === older.point;
    case 'finding':
      return newer.kind === 'finding' && placeOf(newer) === placeOf(older) && isSameLook(newer.sees, older.sees);
    case 'claim':
      return newer.kind === 'claim' && newer.function === older.function && newer.says === older.says;
    case 'claim-place':
      return newer.kind === 'claim-place' && newer.block === older.block && newer.sees === older.sees;
  }
}

const isSameLook = (newer: string, older: string): boolean => newer === older || newer === NOTHING_WRONG || older === NOTHING_WRONG;

/** The block, or the one part of it that was looked at. */
const placeOf = ({ block, part }: Extract<Observation, { kind: 'finding' }>): string => (part === undefined ? block : `${block} ${part}`);
