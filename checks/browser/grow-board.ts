import type { Locator, Page } from 'playwright-core';

/** A model that is begun by six answers. */
export const UNKNOWN_PLAYER = {
  name: 'Unknown player',
  currency: 'GBP',
  from: { answers: { power: 'battery', cell_volts: 3.7, display: 'lit', slot: true, sound: 'speaker', charging: true } },
} as const;

/** Stores events as a program would; throws what the bench says when it refuses them. */
export async function recordEvents(url: string, events: readonly unknown[]): Promise<void> {
  const response = await fetch(`${url}/api/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ events }),
  });
  if (!response.ok) throw new Error(`not stored: ${await response.text()}`);
}

/** Pixels of the photo of the Tern TN-20 that ships: 1600 × 1200, its board of 70 × 55 mm upright on it. */
export const TERN_PHOTO = { file: 'models/tern-tn20/photos/board-front.jpg', width: 1600, height: 1200 } as const;

/** Clicks a pixel of a photo of that size as it is shown now. */
export async function clickPixel(
  stage: Locator,
  size: { readonly width: number; readonly height: number },
  x: number,
  y: number,
): Promise<void> {
  const svg = stage.locator('svg');
  await svg.scrollIntoViewIfNeeded();
  const [image, whole] = [(await stage.locator('image').boundingBox())!, (await svg.boundingBox())!];
  await svg.click({
    position: { x: image.x - whole.x + (x / size.width) * image.width, y: image.y - whole.y + (y / size.height) * image.height },
  });
}

/** Where a place of the front, mm, is within the picture of the board, while the whole of it is seen. */
export async function onPicture(stage: Locator, board: { readonly width: number; readonly height: number }, x: number, y: number) {
  const box = (await stage.locator('svg').boundingBox())!;
  const margin = 1.5;
  const scale = Math.min(box.width / (board.width + 2 * margin), box.height / (board.height + 2 * margin));
  return { x: box.width / 2 + (x - board.width / 2) * scale, y: box.height / 2 + (board.height / 2 - y) * scale };
}

/** The picture of the board itself, by the keys that it takes. */
export const boardStage = (page: Page): Locator => page.getByRole('group', { name: /^Board: arrow keys/ });

/** Corners of the board on that photo, px. */
export const TERN_CORNERS = { lowerLeft: [179, 1087], lowerRight: [1421, 1087], upperLeft: [179, 111] } as const;
