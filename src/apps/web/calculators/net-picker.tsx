import { useState } from 'react';
import { useModels, useNets } from '../api/queries.ts';
import { reading } from '../format/reading.ts';
import { Fold } from '../ui/fold.tsx';
import { Pick } from '../ui/pick.tsx';

interface NetPickerProps {
  /** The model and net that the page before named; empty where it named none. */
  readonly modelId: string;
  readonly net: string;
  readonly onPick: (amps: number) => void;
}

const NONE = { id: '', name: 'choose …' };

/** Takes the current from a net of a board whose circuit is known: the worst steady one of its power states. */
export function NetPicker({ modelId, net, onPick }: NetPickerProps) {
  const models = useModels();
  const [model, setModel] = useState(modelId);
  const [chosen, setChosen] = useState(net);
  const nets = useNets(model).data ?? [];
  const found = nets.find((each) => each.net === chosen);
  const withCircuit = (models.data ?? []).filter(({ level }) => level === 2);
  const pick = (id: string): void => {
    setChosen(id);
    const amps = nets.find((each) => each.net === id)?.current_a;
    if (amps !== undefined) onPick(amps);
  };
  if (withCircuit.length === 0) return null;
  return (
    <Fold title="Current of a net of a known board" open={net !== ''}>
      <div className="fields">
        <Pick label="Model" options={[NONE, ...withCircuit]} value={model} onChange={setModel} />
        <Pick
          label="Net"
          options={[NONE, ...nets.map(({ net: id, current_a: amps }) => ({ id, name: `${id.toUpperCase()}, ${reading(amps, 'amps')}` }))]}
          value={found ? chosen : ''}
          onChange={pick}
        />
      </div>
      {found && (
        <p className="small muted">
          {reading(found.current_a, 'amps')} at worst: {found.state}. By the circuit of a good board as written, without the tolerances of
          its parts, and steady: peaks of converters and motors are not in it.
        </p>
      )}
    </Fold>
  );
}
