import { readNetName, type Contradiction } from '../../../core/netting/index.ts';
import { nameNet } from '../actions/name-net.ts';
import type { Gesture } from '../actions/gesture.ts';
import { counted } from '../format/number.ts';
import { netClass } from './nets-layer.tsx';
import { newAgainst, type Found, type ShownNet } from './probing.ts';
import { useTyped } from './use-typed.ts';

interface NetListProps {
  readonly modelId: string;
  readonly nets: readonly ShownNet[];
  readonly chosen: string | null;
  readonly choose: (node: string | null) => void;
  readonly found: Found;
  /** Stores a name, after a question where it contradicts something. */
  readonly note: (gesture: Gesture, against: readonly Contradiction[]) => void;
}

/** Names that many boards have, to choose from (common practice, no source). */
const USUAL = ['ground', 'battery', '3.3 V', '5 V', '1.8 V', 'vsys', 'vin', 'vout'];

/** All nets, each with its look, its name and its pins. */
export function NetList({ nets, ...rest }: NetListProps) {
  if (nets.length === 0) return <p className="muted">No two pins are known to be joined yet.</p>;
  return (
    <>
      <datalist id="usual-nets">
        {USUAL.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </datalist>
      <ul className="plain-list net-list">
        {nets.map((net) => (
          <NetLine key={net.pins[0]} net={net} {...rest} />
        ))}
      </ul>
    </>
  );
}

function NetLine({ modelId, net, chosen, choose, found, note }: Omit<NetListProps, 'nets'> & { readonly net: ShownNet }) {
  const isChosen = chosen === net.node;
  const name = useTyped(net.isNamed ? net.name : '', (text) => {
    const read = readNetName(text);
    if (!read) return;
    const names = namingPins(net, found).map((pin) => ({ pin, name: read.node }));
    note(nameNet(modelId, names), newAgainst(found, { ...found, names: [...found.names, ...names] }));
  });
  return (
    <li>
      <button type="button" aria-pressed={isChosen} onClick={() => choose(isChosen ? null : net.node)}>
        <svg className={`net-swatch ${netClass(net, null)}`} viewBox="0 0 4 1.4" aria-hidden="true">
          <path className="net-ring" d="M0.1 0.7h3.8" />
        </svg>
        {net.name}, {counted(net.pins.length, 'pin')}
      </button>
      <input
        {...name}
        className="short-input"
        aria-label={`Name of the net ${net.name}`}
        list="usual-nets"
        maxLength={64}
        autoComplete="off"
      />
      <span className="small muted">{net.pins.join(', ')}</span>
    </li>
  );
}

/** The pins at which the name of a net stands: those that were named before, else its first. */
function namingPins({ pins }: ShownNet, { names }: Found): readonly string[] {
  const named = pins.filter((pin) => names.some((each) => each.pin === pin));
  return named.length > 0 ? named : pins.slice(0, 1);
}
