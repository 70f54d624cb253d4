import { describe, expect, it } from 'vitest';
import { commandIn } from './use-voice.ts';

describe('what was said', () => {
  it.each([
    ['Done', 'done'],
    ['next one', 'done'],
    ['that is done', 'done'],
    ['done … no, stop', 'stop'],
    ['abandoned nextdoor', null],
    ['', null],
  ])('"%s" is the command %s', (said, command) => {
    expect(commandIn(said)).toBe(command);
  });
});
