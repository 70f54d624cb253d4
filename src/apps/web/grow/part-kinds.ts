import type { MarkedPart } from '../../../bench/events/index.ts';

/** A kind of thing that can be marked on a board. */
export interface PartKind {
  readonly id: string;
  /** As the log of the bench keeps it, which knows fewer kinds. */
  readonly kept: MarkedPart['kind'];
  readonly name: string;
  /** Letters that its references begin with. */
  readonly letters: string;
  /** Packages that it mostly comes in, the commonest first; the table of packages in docs/model-format.md says what they are. */
  readonly packages: readonly string[];
  /** A value is usually printed for it, or wanted by the netlist. */
  readonly hasValue: boolean;
}

/** Letters as they usually stand on boards, and usual packages (common practice, no source). */
export const PART_KINDS: readonly PartKind[] = [
  { id: 'resistor', kept: 'resistor', name: 'Resistor', letters: 'R', packages: ['0603', '0402', '0805', '1206'], hasValue: true },
  {
    id: 'capacitor',
    kept: 'capacitor',
    name: 'Capacitor',
    letters: 'C',
    packages: ['0603', '0402', '0805', '1206', 'CAN-4', 'CAN-5', 'CAN-6'],
    hasValue: true,
  },
  { id: 'inductor', kept: 'inductor', name: 'Coil', letters: 'L', packages: ['COIL-4', 'COIL-5', '0603', '0805', '1206'], hasValue: true },
  { id: 'diode', kept: 'diode', name: 'Diode', letters: 'D', packages: ['SOD-323', 'SOD-123'], hasValue: true },
  { id: 'light', kept: 'light', name: 'Light', letters: 'D', packages: ['0603', '0805'], hasValue: false },
  { id: 'transistor', kept: 'transistor', name: 'Transistor', letters: 'Q', packages: ['SOT-23', 'SOT-89'], hasValue: true },
  {
    id: 'chip',
    kept: 'chip',
    name: 'Chip',
    letters: 'U',
    packages: ['SOIC-8', 'SOIC-14', 'SOT-23-5', 'SOT-23-6', 'SOT-23', 'SOT-89', 'QFP-32'],
    hasValue: true,
  },
  {
    id: 'connector',
    kept: 'connector',
    name: 'Connector',
    letters: 'J',
    packages: ['SOCKET-2', 'SOCKET-3', 'FLAT-6', 'PORT-3', 'SLOT-12', 'JACK-3', 'WIRES-2', 'SPRING-1'],
    hasValue: false,
  },
  { id: 'switch', kept: 'switch', name: 'Switch', letters: 'S', packages: ['SWITCH-3', 'LEAF-2'], hasValue: false },
  { id: 'key', kept: 'switch', name: 'Key', letters: 'K', packages: ['KEY-2'], hasValue: false },
  { id: 'fuse', kept: 'fuse', name: 'Fuse', letters: 'F', packages: ['1206', '0603', '0805'], hasValue: true },
  {
    id: 'trimmer',
    kept: 'resistor',
    name: 'Trimmer or wheel',
    letters: 'RV',
    packages: ['WHEEL-3', 'TRIMMER-3', 'WHEEL-6'],
    hasValue: true,
  },
  { id: 'crystal', kept: 'crystal', name: 'Crystal', letters: 'Y', packages: ['SOD-123', '1206'], hasValue: true },
  { id: 'test-point', kept: 'test-point', name: 'Test point', letters: 'TP', packages: ['TP'], hasValue: true },
  { id: 'other', kept: 'other', name: 'Something else', letters: 'X', packages: ['0603'], hasValue: true },
  { id: 'hole', kept: 'hole', name: 'Mounting hole', letters: 'H', packages: ['TP'], hasValue: false },
];

/** The kind of a part that the log keeps under a wider one, by the letters of its reference. */
export function kindOfKept(kept: MarkedPart['kind'], ref: string): PartKind {
  const alike = PART_KINDS.filter((kind) => kind.kept === kept);
  return alike.find(({ letters }) => ref.startsWith(letters) && /^\d*$/.test(ref.slice(letters.length))) ?? alike[0]!;
}

export const kindOf = (id: string): PartKind => PART_KINDS.find((kind) => kind.id === id) ?? PART_KINDS[0]!;
