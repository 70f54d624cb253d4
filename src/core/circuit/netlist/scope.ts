import type { Deck, ModelCard } from './deck.ts';
import { parseEngineering } from './engineering.ts';
import { evaluate } from './expression.ts';
import { mistake, type Token } from './types.ts';

/** What names mean at one place of the unfolding: parameters, models and subcircuits, inner before outer. */
export interface Scoped {
  readonly deck: Deck;
  readonly parent: Scoped | undefined;
  readonly params: ReadonlyMap<string, number>;
}

/** The value of a word: a number, `{expression}`, or the name of a parameter. Throws a NetlistMistake. */
export function valueOf(token: Token, params: ReadonlyMap<string, number>): number {
  const quoted = /^[{'](.*)[}']$/s.exec(token.text);
  if (quoted) return evaluate(quoted[1]!, params, token);
  const number = parseEngineering(token.text);
  if (number !== undefined) return number;
  const named = params.get(token.text.toLowerCase());
  if (named !== undefined) return named;
  throw mistake(token, 'number', `"${token.text}" is not a number such as 4.7k, 10u or 1e-9, and no parameter has that name`);
}

/** The parameters of a deck with those handed in by the instance over its defaults; a later one may use an earlier or a later one. */
export function enterDeck(deck: Deck, parent: Scoped | undefined, given: ReadonlyMap<string, number>): Scoped {
  const params = new Map(parent?.params ?? []);
  for (const [key, value] of given) params.set(key, value);
  const waiting = [...deck.params].filter(([key]) => !given.has(key));
  for (const [key] of waiting) params.delete(key);
  settle(waiting, params);
  return { deck, parent, params };
}

/** Evaluates the waiting parameters in an order that lets each find what it needs; a ring of them is a mistake. */
function settle(waiting: readonly (readonly [string, Token])[], params: Map<string, number>): void {
  let left = waiting;
  while (left.length > 0) {
    const next: (readonly [string, Token])[] = [];
    let failure: unknown;
    for (const [key, token] of left) {
      try {
        params.set(key, valueOf(token, params));
      } catch (error) {
        failure ??= error;
        next.push([key, token]);
      }
    }
    if (next.length === left.length) throw failure;
    left = next;
  }
}

export function findModel(name: string, scope: Scoped | undefined): ModelCard | undefined {
  return scope && (scope.deck.models.get(name) ?? findModel(name, scope.parent));
}

export function findDeck(name: string, scope: Scoped | undefined): { deck: Deck; home: Scoped } | undefined {
  if (!scope) return undefined;
  const deck = scope.deck.decks.get(name);
  return deck ? { deck, home: scope } : findDeck(name, scope.parent);
}
