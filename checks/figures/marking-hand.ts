import type { Locator } from 'playwright-core';

/** The hand of a scripted user in a browser, which counts what it does. */
export class MarkingHand {
  clicks = 0;
  keys = 0;
  /** How often it went from the mouse to the keyboard. */
  reaches = 0;

  async click(target: Locator, position?: { readonly x: number; readonly y: number }): Promise<void> {
    this.clicks += 1;
    await target.click(position ? { position } : {});
  }

  /** Another choice of a list: one click opens it, one takes it. */
  async choose(list: Locator, value: string): Promise<void> {
    if ((await list.inputValue()) === value) return;
    this.clicks += 2;
    await list.selectOption(value);
  }

  /** What stands in a field, written anew: a click, the keys, and Enter. */
  async write(field: Locator, text: string): Promise<void> {
    if ((await field.inputValue()) === text) return;
    this.clicks += 1;
    this.reaches += 1;
    this.keys += text.length + 1;
    await field.click({ clickCount: 3 });
    await field.fill(text);
    await field.press('Enter');
  }

  /**
   * Minutes that a practised hand would need for all of it and for thinking once a part: 1.1 s to point, 0.1 s a press of the button, 0.28 s a key, 0.4 s from
   * mouse to keyboard and as much back, 1.35 s to think (Card, Moran and Newell 1980, the keystroke-level model; numbers from memory).
   */
  minutes(parts: number): number {
    return (this.clicks * (1.1 + 0.1) + this.keys * 0.28 + this.reaches * 2 * 0.4 + parts * 1.35) / 60;
  }
}
