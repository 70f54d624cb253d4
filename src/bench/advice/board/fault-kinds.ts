import type { CircuitFaultKind } from '../../../core/circuit/index.ts';
import type { ModelFile } from '../../models/index.ts';

type Seen = ModelFile['faults'][number]['seen'];
type Behaves = NonNullable<ModelFile['faults'][number]['behaves']>;
type Mode = ModelFile['faults'][number]['mode'];

/** What of a fault of the circuit its circuit does not tell: its name among the modes, how it shows to the eye, and whether what it stops fails for good. */
export interface KindOfFault {
  readonly mode: Mode;
  readonly seen: Seen;
  /** Given that the circuit does not allow the function. */
  readonly behaves: Behaves;
}

const FOR_GOOD: Behaves = { works: 0.02, comes_and_goes: 0.05, fails: 0.93 };
const LOOSE: Behaves = { works: 0.05, comes_and_goes: 0.5, fails: 0.45 };
const WAVERING: Behaves = { works: 0.1, comes_and_goes: 0.25, fails: 0.65 };

/** Common practice, no source: what the eye finds under a lens, and what comes and goes. */
export const KINDS_OF_FAULT: Readonly<Record<CircuitFaultKind, KindOfFault>> = {
  open: { mode: 'open', seen: { cracked: 0.15, burnt: 0.1 }, behaves: FOR_GOOD },
  short: { mode: 'short', seen: { burnt: 0.2, cracked: 0.1 }, behaves: FOR_GOOD },
  leaky: { mode: 'leaky', seen: { residue: 0.1, corrosion: 0.1 }, behaves: WAVERING },
  'drifted-up': { mode: 'drifted', seen: { burnt: 0.05 }, behaves: WAVERING },
  'drifted-down': { mode: 'drifted', seen: { burnt: 0.05 }, behaves: WAVERING },
  missing: { mode: 'missing', seen: { missing: 0.97 }, behaves: FOR_GOOD },
  reversed: { mode: 'open', seen: { moved: 0.5 }, behaves: FOR_GOOD },
  dead: { mode: 'dead', seen: { burnt: 0.2, corrosion: 0.05 }, behaves: FOR_GOOD },
  'supply-shorted': { mode: 'short', seen: { burnt: 0.2 }, behaves: FOR_GOOD },
  'dirty-contact': { mode: 'dirty-contact', seen: { dirty: 0.5, corrosion: 0.2, residue: 0.15 }, behaves: LOOSE },
  'open-joint': { mode: 'cracked', seen: { 'dry-joint': 0.45, cracked: 0.2, loose: 0.15, moved: 0.05 }, behaves: LOOSE },
  bridge: { mode: 'bridged', seen: { bridged: 0.6, residue: 0.1 }, behaves: FOR_GOOD },
  'liquid-leak': { mode: 'leaky', seen: { residue: 0.6, corrosion: 0.4 }, behaves: WAVERING },
};

/** Kinds of circuit fault that a fault of the model file may be, by its mode, the closest first. */
export const KINDS_OF_MODE: Readonly<Record<Mode, readonly (readonly CircuitFaultKind[])[]>> = {
  open: [['open'], ['open-joint']],
  short: [['short'], ['supply-shorted']],
  leaky: [['leaky']],
  drifted: [['drifted-up', 'drifted-down']],
  missing: [['missing']],
  bridged: [['bridge']],
  dead: [['dead']],
  'dirty-contact': [['dirty-contact']],
  worn: [],
  cracked: [['open-joint'], ['open']],
  flat: [['drifted-down']],
};
