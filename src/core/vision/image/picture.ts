import { greyOf, opponentsOf, type Pixels, type Plane } from './plane.ts';

/** A picture as it is compared: brightness and two opponent colours, each 8-bit scaled. Pictures without colour have planes of zeros. */
export interface Picture {
  readonly grey: Plane;
  readonly yellowBlue: Plane;
  readonly redGreen: Plane;
  readonly coloured: boolean;
}

/** The planes of a decoded picture. */
export const pictureOf = (pixels: Pixels): Picture => ({ grey: greyOf(pixels), ...opponentsOf(pixels), coloured: pixels.channels > 1 });

/** The same done to every plane of a picture; colour planes of a picture without colour are only brought to size. */
export function eachPlane(picture: Picture, change: (plane: Plane) => Plane): Picture {
  const grey = change(picture.grey);
  if (!picture.coloured) {
    const none = { width: grey.width, height: grey.height, data: new Float32Array(grey.data.length) };
    return { grey, yellowBlue: none, redGreen: none, coloured: false };
  }
  return { grey, yellowBlue: change(picture.yellowBlue), redGreen: change(picture.redGreen), coloured: true };
}
