/** What stands on a board for each block, by its id: a main part at the place of the block, and small ones around it. */
const LOOKS = {
  'battery-contacts': ['spring', ['spring', 'diode']],
  'battery-socket': ['wires', []],
  fuse: ['bigCapacitor', []],
  switch: ['slideSwitch', ['diode', 'capacitor']],
  inlet: ['smallSocket', ['diode', 'can', 'capacitor', 'resistor']],
  'charge-port': ['smallSocket', ['diode', 'can', 'capacitor', 'resistor']],
  'charge-control': ['chip8', ['resistor', 'resistor', 'capacitor', 'capacitor']],
  converter: ['chip8', ['inductor', 'can', 'can', 'diode', 'bigCapacitor', 'resistor', 'resistor']],
  regulator: ['transistor', ['can', 'capacitor', 'capacitor']],
  contrast: ['trimmer', ['transistor', 'transistor', 'can', 'capacitor', 'resistor', 'resistor']],
  processor: ['bigChip', [...Array(6).fill('capacitor'), ...Array(4).fill('resistor')]],
  clock: ['quartz', ['capacitor', 'capacitor']],
  memory: ['memoryChip', Array(3).fill('capacitor')],
  slot: ['cartridgeSlot', [...Array(5).fill('resistor'), ...Array(3).fill('capacitor')]],
  sound: ['chip14', ['can', 'can', 'can', ...Array(5).fill('capacitor'), ...Array(4).fill('resistor')]],
  amplifier: ['chip14', ['can', 'can', 'can', ...Array(4).fill('capacitor'), ...Array(4).fill('resistor')]],
  preamp: ['chip14', ['plug', 'can', 'can', ...Array(4).fill('capacitor'), ...Array(6).fill('resistor')]],
  volume: ['wheel', ['capacitor', 'resistor']],
  'phone-socket': ['jack', ['capacitor', 'capacitor', 'resistor']],
  'link-socket': ['smallSocket', ['resistor', 'resistor', 'capacitor']],
  keys: ['keyContact', ['smallKey', 'resistor', 'resistor']],
  display: ['flatSocket', ['transistor', 'capacitor', 'capacitor', 'resistor']],
  'light-driver': ['chip8', ['smallFlat', 'inductor', 'diode', 'bigCapacitor', 'resistor']],
  speaker: ['wires', ['capacitor']],
  'motor-drive': ['chip8', ['plug', 'trimmer', 'can', 'can', 'transistor', ...Array(4).fill('resistor')]],
};

/** The look of a block; a block that is not on the board has none. */
export function lookOf(blockId) {
  const [main, around] = LOOKS[blockId] ?? [null, []];
  return { main, around };
}

/** Letters that stand for the kind of part on the silk, as is common practice. */
export const PREFIX = {
  bigChip: 'U', memoryChip: 'U', chip14: 'U', chip8: 'U', transistor: 'Q', capacitor: 'C', bigCapacitor: 'C', can: 'C',
  resistor: 'R', inductor: 'L', quartz: 'X', diode: 'D', cartridgeSlot: 'J', plug: 'J', flatSocket: 'J', smallFlat: 'J', jack: 'J', smallSocket: 'J',
  slideSwitch: 'S', wheel: 'RV', trimmer: 'RV', spring: 'BT', wires: 'W', keyContact: 'K', smallKey: 'K', testPoint: 'TP',
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
