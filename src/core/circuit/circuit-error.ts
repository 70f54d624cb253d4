/** Thrown for a mistake of the caller, never for a circuit that has no answer. */
export class CircuitError extends Error {
  constructor(
    readonly code: 'unknown-name' | 'singular' | 'shape',
    message: string,
  ) {
    super(message);
    this.name = 'CircuitError';
  }
}
