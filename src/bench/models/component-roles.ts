import type { Role } from '../../core/circuit/index.ts';
import type { ModelCircuit } from './model-circuit.ts';

/** What a component is by its package, where the letters of its reference do not tell: a switch, a wheel and a spring have contacts. */
const BY_PACKAGE: Readonly<Record<string, Role>> = {
  SLOT: 'contact',
  FLAT: 'contact',
  PORT: 'contact',
  SOCKET: 'contact',
  JACK: 'contact',
  WIRES: 'contact',
  SWITCH: 'contact',
  LEAF: 'contact',
  WHEEL: 'contact',
  TRIMMER: 'contact',
  SPRING: 'contact',
  KEY: 'key',
  COIL: 'coil',
};

/** Roles by lower-case reference, of those components whose package tells it. */
export function componentRoles({ parts }: Pick<ModelCircuit, 'parts'>): ReadonlyMap<string, Role> {
  return new Map(
    parts.flatMap((part) => {
      const role = BY_PACKAGE[part.package.split('-', 1)[0]!];
      return role ? [[part.ref.toLowerCase(), role] as const] : [];
    }),
  );
}
