import { describe, expect, it } from 'vitest';
import { boardOfPlacement, cameraOver, degreesApart, plantFaults, randomBoard, seenAt } from '../../scripts/render-boards/index.mjs';
import { randomStream } from '../../src/core/numeric/index.ts';
import { fourPointMap, poseOf, type Quad } from '../../src/core/vision/index.ts';

const SIZE = { width: 1200, height: 900 };
const board = randomBoard('check', randomStream('renderer check'));
const { width, height } = board;
const square = cameraOver(board, SIZE, { tiltDeg: 0, towardDeg: 0, turnDeg: 0, fill: 0.8 });

describe('the truth of drawn boards', () => {
  it('has the middle of the board in the middle of the photo and its width over the share that was asked for', () => {
    expect(seenAt(square, [width / 2, height / 2, 0])).toEqual([599.5, 449.5]);
    expect(seenAt(square, [width, height / 2, 0])[0] - seenAt(square, [0, height / 2, 0])[0]).toBeCloseTo(0.8 * 1200, 6);
  });

  it.each([
    [0, 8],
    [90, 12],
    [215, 5],
  ])('leans the camera towards %s° by as much as the eyes read off the four corners of the board: %s°', (towardDeg, tiltDeg) => {
    const leaning = cameraOver(board, SIZE, { tiltDeg, towardDeg, turnDeg: 10, fill: 0.7 });
    const corners: Quad = [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ];
    const seen = (camera: typeof square): Quad => corners.map(([x, y]) => seenAt(camera, [x, y, 0])) as unknown as Quad;
    const pose = poseOf(fourPointMap(seen(square), seen(leaning))!, SIZE.width, SIZE.height, leaning.focalPx);
    expect(degreesApart(square, leaning)).toBeCloseTo(tiltDeg, 6);
    expect(pose.tiltDeg).toBeCloseTo(tiltDeg, 0);
  });

  it('shows the top of a tall part beside its foot in a photo, and on it in a scan', () => {
    const scan = cameraOver(board, SIZE, { tiltDeg: 0, towardDeg: 0, turnDeg: 0, fill: 0.8, isScan: true });
    const parallax = (camera: typeof square): number =>
      seenAt(camera, [width, height / 2, 5])[0] - seenAt(camera, [width, height / 2, 0])[0];
    expect(parallax(square)).toBeGreaterThan(20);
    expect(parallax(scan)).toBeLessThan(0.6);
  });

  it('plants the asked number of faults on the board, the same by the same seed, none within 3 mm of another', () => {
    const faults = plantFaults(board, 6, randomStream('faults'));
    expect(plantFaults(board, 6, randomStream('faults'))).toEqual(faults);
    expect(faults).toHaveLength(6);
    const boxes = faults.map(({ corners }) => ({
      left: Math.min(...corners.map(([x]) => x)),
      right: Math.max(...corners.map(([x]) => x)),
      top: Math.min(...corners.map(([, y]) => y)),
      bottom: Math.max(...corners.map(([, y]) => y)),
    }));
    for (const [i, a] of boxes.entries()) {
      expect(a.right > 0 && a.left < width && a.bottom > 0 && a.top < height).toBe(true);
      for (const b of boxes.slice(i + 1))
        expect(Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom)).toBeGreaterThan(3);
    }
  });

  it('says which package of a placement it cannot draw', () => {
    const placement = 'Ref,X,Y,Rotation,Side,Value,Package,Block,Nets\nU1,5,5,0,front,Odd,ODD-99,none,\n';
    const given = { name: 'Odd board', placement, width: 20, height: 20, mask: 'green', random: randomStream('odd') };
    expect(() => boardOfPlacement(given)).toThrow('There is no package "ODD-99", which U1 of Odd board has');
  });
});
