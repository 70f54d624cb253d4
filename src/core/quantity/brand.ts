declare const unit: unique symbol;

/**
 * A value that carries its unit or frame in its type, so that an ohm cannot be handed over as an ampere.
 * At run time it is the bare value.
 */
export type Branded<Base, Unit extends string> = Base & { readonly [unit]: Unit };

/** The constructor of one branded number. Throws `QuantityError` on NaN or infinity: a quantity is always a real number. */
export function brand<Unit extends string>(name: Unit): (value: number) => Branded<number, Unit> {
  return (value) => {
    if (!Number.isFinite(value)) throw new QuantityError('not-finite', `${name} must be a finite number, got ${value}`);
    return value as Branded<number, Unit>;
  };
}

/** A caller's mistake with a quantity: `code` says which. */
export class QuantityError extends Error {
  constructor(
    readonly code: 'not-finite' | 'not-an-integer' | 'unknown-currency' | 'mixed-currencies' | 'bad-weights',
    message: string,
  ) {
    super(message);
    this.name = 'QuantityError';
  }
}
