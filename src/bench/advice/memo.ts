/**
 * Remembers the answers to the latest questions, by what they depend on, written out: the same words always have the
 * same answer, so nothing here can grow stale. When `most` is reached the older half is forgotten.
 */
export class Memo<Answer> {
  readonly #answers = new Map<string, Answer>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(question: string, answer: () => Answer): Answer {
    const known = this.#answers.get(question);
    if (known !== undefined) return known;
    const fresh = answer();
    if (this.#answers.size >= this.#most) this.#forgetOlderHalf();
    this.#answers.set(question, fresh);
    return fresh;
  }

  #forgetOlderHalf(): void {
    let left = this.#answers.size >> 1;
    for (const question of this.#answers.keys()) {
      if (left-- <= 0) return;
      this.#answers.delete(question);
    }
  }
}
