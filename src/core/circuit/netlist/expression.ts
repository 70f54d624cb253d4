import { parseEngineering } from './engineering.ts';
import { mistake, type Place } from './types.ts';

/** Values of parameters by lower-case name. */
export type Scope = ReadonlyMap<string, number>;

const FUNCTIONS: Readonly<Record<string, (...args: number[]) => number>> = {
  sqrt: Math.sqrt,
  abs: Math.abs,
  exp: Math.exp,
  ln: Math.log,
  log: Math.log,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  min: Math.min,
  max: Math.max,
  pow: (a, b) => a ** b!,
};

const LEXEME = /\s*(?:([\d.][\w.]*(?:(?<=\de)[+-]\d+)?)|([a-z_]\w*)|(\*\*|[-+*/^(),]))/iy;

/** Deepest nesting of an expression; past it the text is built to hurt rather than to be read. */
const MAX_DEPTH = 64;

/**
 * The value of an arithmetic expression: + - * / ^ ** (power, to the right), parentheses, the functions of SPICE's parameter language that are
 * listed above, numbers with engineering suffixes, and parameters of `scope`. Throws a NetlistMistake at `at`.
 */
export function evaluate(text: string, scope: Scope, at: Place): number {
  const reader = new ExpressionReader(text, scope, at);
  const value = reader.sum(0);
  reader.end();
  if (!Number.isFinite(value)) throw mistake(at, 'expression', `"${text}" has no finite value`);
  return value;
}

class ExpressionReader {
  private index = 0;
  private kind: 'number' | 'name' | 'sign' | 'end' = 'end';
  private word = '';

  constructor(
    private readonly text: string,
    private readonly scope: Scope,
    private readonly at: Place,
  ) {
    this.next();
  }

  end(): void {
    if (this.kind !== 'end') throw this.wrong(`"${this.word}" is not expected there`);
  }

  sum(depth: number): number {
    if (depth > MAX_DEPTH) throw this.wrong('it is nested too deeply');
    let value = this.product(depth);
    for (;;) {
      if (this.take('+')) value += this.product(depth);
      else if (this.take('-')) value -= this.product(depth);
      else return value;
    }
  }

  private product(depth: number): number {
    let value = this.signed(depth);
    for (;;) {
      if (this.take('*')) value *= this.signed(depth);
      else if (this.take('/')) value /= this.signed(depth);
      else return value;
    }
  }

  private signed(depth: number): number {
    let sign = 1;
    for (;;) {
      if (this.take('-')) sign = -sign;
      else if (!this.take('+')) return sign * this.power(depth);
    }
  }

  private power(depth: number): number {
    if (depth > MAX_DEPTH) throw this.wrong('it is nested too deeply');
    const base = this.atom(depth);
    return this.take('^') || this.take('**') ? base ** this.power(depth + 1) : base;
  }

  private atom(depth: number): number {
    const { kind, word } = this;
    if (this.take('(')) return this.closed(() => this.sum(depth + 1));
    this.next();
    if (kind === 'number') {
      const value = parseEngineering(word);
      if (value === undefined) throw this.wrong(`"${word}" is not a number`);
      return value;
    }
    if (kind !== 'name') throw this.wrong(kind === 'end' ? 'it ends too early' : `"${word}" is not expected there`);
    return this.take('(') ? this.call(word.toLowerCase(), depth) : this.parameter(word.toLowerCase());
  }

  private call(name: string, depth: number): number {
    if (!Object.hasOwn(FUNCTIONS, name)) throw this.wrong(`there is no function "${name}"; there are ${Object.keys(FUNCTIONS).join(', ')}`);
    const args = [this.sum(depth + 1)];
    while (this.take(',')) args.push(this.sum(depth + 1));
    return this.closed(() => FUNCTIONS[name]!(...args));
  }

  private parameter(name: string): number {
    const value = this.scope.get(name);
    if (value === undefined)
      throw mistake(this.at, 'unknown-name', `the parameter "${name}" is not defined; give it a value with .param ${name}=…`);
    return value;
  }

  private closed(inner: () => number): number {
    const value = inner();
    if (!this.take(')')) throw this.wrong('a ")" is missing');
    return value;
  }

  private take(sign: string): boolean {
    if (this.kind !== 'sign' || this.word !== sign) return false;
    this.next();
    return true;
  }

  private next(): void {
    LEXEME.lastIndex = this.index;
    const match = LEXEME.exec(this.text);
    if (!match) {
      if (this.text.slice(this.index).trim() !== '') throw this.wrong(`"${this.text.slice(this.index).trim()}" cannot be read`);
      this.kind = 'end';
      return;
    }
    this.index = LEXEME.lastIndex;
    this.kind = match[1] !== undefined ? 'number' : match[2] !== undefined ? 'name' : 'sign';
    this.word = match[0].trim();
  }

  private wrong(why: string): Error {
    return mistake(this.at, 'expression', `the expression "${this.text}" cannot be computed: ${why}`);
  }
}
