import { expect, it } from 'vitest';
import { browserCommand } from './open-browser.ts';

it('opens the browser by the means of each system, and not where there is no screen', () => {
  expect(browserCommand('darwin', {})).toEqual(['open']);
  expect(browserCommand('win32', {})).toEqual(['cmd', '/c', 'start', '""']);
  expect(browserCommand('linux', { DISPLAY: ':0' })).toEqual(['xdg-open']);
  expect(browserCommand('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toEqual(['xdg-open']);
  expect(browserCommand('linux', {})).toBeUndefined();
});
