import { KINDS } from './part-kinds.mjs';

/** The pads of a placed part on the board: middle and size in mm. A part may bring `pads` of its own instead of those of its kind. */
export function padsOf(part) {
  const turn = (part.turn * Math.PI) / 180;
  const [cos, sin] = [Math.round(Math.cos(turn)), Math.round(Math.sin(turn))];
  return (part.pads ?? KINDS[part.kind].pads).map((pad) => ({
    x: part.x + pad.x * cos - pad.y * sin,
    y: part.y + pad.x * sin + pad.y * cos,
    w: part.turn % 180 === 0 ? pad.w : pad.h,
    h: part.turn % 180 === 0 ? pad.h : pad.w,
  }));
}
