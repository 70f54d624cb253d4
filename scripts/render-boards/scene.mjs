import { boardPaint, MASKS } from './board-paint.mjs';
import { textPath, textWidth } from '../demo-photos/stroke-font.mjs';
import { PACKAGES } from './packages.mjs';
import { bareSolder, bodySolids, dome, fillets, padSolids } from './solids.mjs';

/**
 * One board of its kind as a scene: solids that stand on it by group (each group has a pose), its paint, films and prints. Boards of one kind differ by `random`: solder,
 * shade of parts, a little in their places, the code on chips, dust. `faults` as `plantFaults` gives them.
 */
export function specimenOf(board, faults, random) {
  const groups = board.parts.flatMap((part) =>
    groupsOf(
      part,
      faults.find(({ ref, fault }) => ref === part.ref && ['gone', 'moved'].includes(fault)),
      random,
    ),
  );
  const loose = faults.flatMap(({ solids = [] }) => solids);
  return {
    width: board.width,
    height: board.height,
    edge: MASKS[board.mask].gap,
    paint: [...boardPaint(board), ...faults.flatMap(({ marks = [] }) => marks)],
    films: faults.flatMap(({ film }) => (film ? [film] : [])),
    groups: [...groups, { pose: { x: 0, y: 0, turn: 0, leanDeg: 0 }, solids: [...loose, ...dustOn(board, random)] }],
    prints: board.parts
      .filter(({ ref }) => !faults.some((each) => each.ref === ref && each.fault === 'gone'))
      .flatMap((part) => printOf(part, random)),
  };
}

function groupsOf(part, fault, random) {
  const at = { x: part.x, y: part.y, turn: part.turn, leanDeg: 0 };
  const pads = { pose: at, solids: padSolids(part) };
  if (fault?.fault === 'gone') return [{ ...pads, solids: [...pads.solids, ...bareSolder(part, random)] }];
  const isSmall = part.kind.startsWith('0') || part.kind.startsWith('1');
  const slack = isSmall ? 0.12 : 0.06;
  const spread = (most) => (2 * random() - 1) * most;
  const { dx = 0, dy = 0, turn = 0, leanDeg = 0 } = fault?.change ?? {};
  const pose = { x: at.x + spread(slack) + dx, y: at.y + spread(slack) + dy, turn: at.turn + spread(isSmall ? 2.5 : 0.7) + turn, leanDeg };
  return [
    { pose: at, solids: [...pads.solids, ...fillets(part, random)] },
    { pose, ref: part.ref, solids: bodySolids(part, random()) },
  ];
}

/** The code on top of a chip: the type is the board's, the date the chip's own. */
function printOf(part, random) {
  const { form, body } = PACKAGES[part.kind];
  const date = `${1 + Math.floor(8 * random())}${10 + Math.floor(40 * random())}`;
  if (form !== 'chip' || part.kind.startsWith('SOT')) return [];
  const lines = [part.value.toUpperCase(), date];
  const size = Math.min(body[1] / 4.2, (body[0] * 0.8) / Math.max(...lines.map((line) => textWidth(line, 1))));
  const paths = lines.map((line, i) => textPath(line, -textWidth(line, size) / 2, (i - 0.1) * size * 1.5, size));
  return [{ ref: part.ref, size: [body[0], body[1]], z: body[2] + 0.125, paths, stroke: '#b8b8b2', width: size * 0.15 }];
}

/** Specks and short fibres, lying anywhere. */
function dustOn(board, random) {
  const count = 8 + Math.floor(random() * 22);
  return Array.from({ length: count }, () => {
    const long = random() < 0.2 ? 0.8 + random() : 0.1 + 0.15 * random();
    return { ...dome(random() * board.width, random() * board.height, 0.02, [long, 0.1, 0.06], '#9a968c', 'crust'), turn: random() * 180 };
  });
}

/** Lamps of a room: `angleDeg` where the first one stands around the board, `count` one or two, `warmth` −1..1. Places are mm from the board's middle. */
export function lampsAt({ angleDeg, count, warmth, isScan = false }) {
  const tint = [1 + 0.12 * warmth, 1, 1 - 0.16 * warmth];
  if (isScan)
    return {
      tint,
      ambient: 1.1,
      lamps: [
        { at: [0, -260, 330], power: 0.9, hasShadow: false },
        { at: [0, 260, 330], power: 0.9, hasShadow: false },
      ],
    };
  const lamp = (deg, power) => {
    const at = (deg * Math.PI) / 180;
    return { at: [190 * Math.cos(at), 190 * Math.sin(at), 260], power, hasShadow: true };
  };
  return { tint, ambient: 0.55, lamps: [lamp(angleDeg, count === 1 ? 2.1 : 1.4), ...(count === 2 ? [lamp(angleDeg + 130, 0.9)] : [])] };
}
