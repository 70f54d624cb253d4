/**
 * What stands on a board for each block, by words in the id of the block: a main part at the place of the block and the
 * small ones around it. First match wins; a block that matches nothing is a chip of 14 legs.
 */
const LOOKS = [
  [/shell|case|belt|head$|window|lens|cell|mechanism|cassette|reel|pinch/, null, []],
  [/batt|spring|contact/, 'spring', ['diode']],
  [/switch|power$/, 'slideSwitch', ['diode', 'capacitor']],
  [/fuse/, 'diode', []],
  [/charg|inlet|dc|socket/, 'jack', ['diode', 'can', 'capacitor', 'resistor']],
  [/convert|regul|supply|boost|rail/, 'chip8', ['inductor', 'can', 'diode', 'bigCapacitor', 'bigCapacitor', 'resistor', 'resistor']],
  [/process|cpu|logic|core/, 'bigChip', ['quartz', ...Array(6).fill('capacitor'), ...Array(4).fill('resistor')]],
  [/memory|ram|rom|store/, 'memoryChip', Array(3).fill('capacitor')],
  [/slot|cart/, 'cartridgeSlot', [...Array(5).fill('resistor'), ...Array(3).fill('capacitor')]],
  [/speaker/, 'wires', ['capacitor']],
  [/phone|jack/, 'jack', ['capacitor', 'capacitor', 'resistor']],
  [/volume/, 'wheel', ['capacitor', 'resistor']],
  [/sound|audio|amp|dolby/, 'chip14', ['can', 'can', 'can', ...Array(5).fill('capacitor'), ...Array(4).fill('resistor')]],
  [/display|screen|lcd|picture/, 'flatSocket', ['transistor', 'capacitor', 'capacitor', 'resistor', 'trimmer']],
  [/light|lamp/, 'smallFlat', ['transistor', 'inductor', 'diode', 'bigCapacitor', 'resistor']],
  [/key|button|pad/, 'keyContact', []],
  [/motor|drive|speed|servo/, 'wideChip', ['plug', 'trimmer', 'can', ...Array(4).fill('resistor'), 'transistor']],
  [/head|preamp/, 'chip8', ['plug', ...Array(4).fill('capacitor'), ...Array(4).fill('resistor'), 'can']],
  [/leaf|sense|stop/, 'leafSwitch', ['resistor']],
  [/clock|quartz|crystal|oscill/, 'quartz', ['capacitor', 'capacitor']],
];

export function lookOf(blockId) {
  const found = LOOKS.find(([words]) => words.test(blockId));
  return found ? { main: found[1], around: found[2] } : { main: 'chip14', around: ['capacitor', 'capacitor', 'resistor'] };
}

/** Letters that stand for the kind of part on the silk, as is common practice. */
export const PREFIX = {
  bigChip: 'U', memoryChip: 'U', wideChip: 'U', chip14: 'U', chip8: 'U', transistor: 'Q', capacitor: 'C', bigCapacitor: 'C', can: 'C',
  resistor: 'R', inductor: 'L', quartz: 'X', diode: 'D', cartridgeSlot: 'J', plug: 'J', flatSocket: 'J', smallFlat: 'J', jack: 'J',
  slideSwitch: 'S', leafSwitch: 'S', wheel: 'RV', trimmer: 'RV', spring: 'BT', wires: 'W', keyContact: 'K', smallKey: 'K', testPoint: 'TP',
}; // prettier-ignore

/** Legends of invented makers; the number is drawn by the seed. */
export function legendOf(kind, random) {
  const digits = (n) => String(Math.floor(random() * 9 * 10 ** (n - 1) + 10 ** (n - 1)));
  const date = `${1 + Math.floor(random() * 8)}${digits(2)}`;
  const pick = (list) => list[Math.floor(random() * list.length)];
  switch (kind) {
    case 'bigChip':
      return ['SKERRY', `SK${digits(4)}`, `${date} A2`];
    case 'memoryChip':
      return ['MORVEN', `MV${digits(3)}-12`, date];
    case 'wideChip':
      return ['ORBELL', `OB${digits(4)}`];
    case 'chip14':
      return [`OB${digits(3)}`, date];
    case 'chip8':
      return [`TN${digits(2)}`, date];
    case 'transistor':
      return [`${pick('HKMT')}${digits(1)}`];
    case 'resistor':
      return [pick(['103', '472', '101', '223', '000', '104'])];
    case 'inductor':
      return [pick(['220', '101', '470'])];
    case 'can':
      return [pick(['100', '47', '220']), pick(['6V', '10V', '16V'])];
    default:
      return [];
  }
}
