/**
 * Letters as pen strokes on a grid 4 wide and 6 high, so that legends look printed by a plotter and do not depend on
 * the fonts of the machine. Each stroke is a run of digit pairs "xy".
 */
const GLYPHS = {
  A: '0004264440 0242',
  B: '00063645443303 3342413000',
  C: '4536160501103041',
  D: '00062644422000',
  E: '40000646 0333',
  F: '000646 0333',
  G: '45361605011030414323',
  H: '0006 4046 0343',
  I: '2026 1030 1636',
  J: '4641301001',
  K: '0006 4602 1340',
  L: '060040',
  M: '0006234640',
  N: '00064046',
  O: '100105163645413010',
  P: '00063645443303',
  Q: '100105163645413010 2240',
  R: '00063645443303 2340',
  S: '453616050413334241301001',
  T: '2026 0646',
  U: '060110304146',
  V: '062046',
  W: '0610233046',
  X: '0046 0640',
  Y: '062346 2320',
  Z: '06460040',
  0: '100105163645413010',
  1: '152620 1030',
  2: '05163645440040',
  3: '064624344341301001',
  4: '30360242',
  5: '460603334241301001',
  6: '46260401103041423303',
  7: '064610',
  8: '13040516364544331302011030414233',
  9: '00204245361605041343',
  '-': '0343',
  '+': '0343 2125',
  '/': '0046',
  '.': '2021',
  '>': '052301',
  '<': '452341',
};

/** SVG path of a line of text whose left lower corner is at (x, y), `size` high; y grows downwards. */
export function textPath(text, x, y, size) {
  const unit = size / 6;
  let pen = x;
  const strokes = [];
  for (const letter of text.toUpperCase()) {
    for (const stroke of (GLYPHS[letter] ?? '').split(' ').filter(Boolean)) {
      const points = stroke.match(/../g).map(([gx, gy]) => `${(pen + gx * unit).toFixed(3)} ${(y - gy * unit).toFixed(3)}`);
      strokes.push(`M${points.join('L')}`);
    }
    pen += (letter === ' ' ? 3.5 : 5.6) * unit;
  }
  return strokes.join('');
}

/** Width that `textPath` takes. */
export const textWidth = (text, size) => [...text].reduce((sum, letter) => sum + ((letter === ' ' ? 3.5 : 5.6) * size) / 6, 0);
