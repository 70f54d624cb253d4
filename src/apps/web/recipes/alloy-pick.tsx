import { ALLOYS, workTemperatures, type Alloy } from '../../../core/rework/index.ts';
import { Pick } from '../ui/pick.tsx';

const OPTIONS = (Object.keys(ALLOYS) as Alloy[]).map((id) => ({ id, name: `${id} (${meltsAt(id)}, ${ALLOYS[id].family})` }));

interface AlloyPickProps {
  readonly alloy: Alloy;
  readonly onChange: (alloy: Alloy) => void;
  readonly onLead: boolean;
  readonly onLeadChange: (onLead: boolean) => void;
}

/** The solder that is used, and what was there before: temperatures follow from it. */
export function AlloyPick({ alloy, onChange, onLead, onLeadChange }: AlloyPickProps) {
  const { jointC, warnings } = workTemperatures(alloy, onLead);
  return (
    <div className="form">
      <Pick label="Solder" options={OPTIONS} value={alloy} onChange={(id) => onChange(id as Alloy)} />
      <label className="check-line">
        <input type="checkbox" checked={onLead} onChange={(event) => onLeadChange(event.target.checked)} />
        Solder with lead was on the pads
      </label>
      <p className="small muted">
        Melts at {meltsAt(alloy)}; the joint at its hottest {jointC[0]} to {jointC[1]} °C. Settings below are 100 to 150 K above for a tip,
        80 to 160 K for air: common practice, no source. Tips and stations are often 10 to 20 K off.
      </p>
      {warnings.includes('bismuth-and-lead-melt-at-96') && (
        <p role="alert">Bismuth and lead make a part of the joint melt at 96 °C: clean all old solder off, or take another alloy.</p>
      )}
    </div>
  );
}

function meltsAt(alloy: Alloy): string {
  const { solidusC, liquidusC } = ALLOYS[alloy];
  return solidusC === liquidusC ? `${liquidusC} °C` : `${solidusC} to ${liquidusC} °C`;
}
