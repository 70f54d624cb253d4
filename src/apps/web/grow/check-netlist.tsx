import { oddWords } from '../../../bench/netting/reading-words.ts';
import type { ModelCheckView } from '../../../bench/views/index.ts';
import { counted } from '../format/number.ts';
import { Section } from '../ui/section.tsx';

interface CheckNetlistProps {
  readonly view: ModelCheckView;
  readonly goesOn: boolean;
  readonly setGoesOn: (goesOn: boolean) => void;
}

/** The netlist held against readings of good boards, and where it is most likely wrong. */
export function CheckNetlist({ view, goesOn, setGoesOn }: CheckNetlistProps) {
  const { compared, odd } = view;
  return (
    <Section id="netlist" title="The netlist against good boards">
      {compared === 0 ? (
        <p>There is no netlist that could be held against readings of good boards. The power tree alone will do.</p>
      ) : odd.length === 0 ? (
        <p>It predicts all {counted(compared, 'reading')} of good boards.</p>
      ) : (
        <>
          <p>
            {odd.length} of {counted(compared, 'reading')} of good boards {odd.length === 1 ? 'is' : 'are'} not as it says:
          </p>
          <ul className="check-list">
            {odd.map((each) => (
              <li key={each.point}>{oddWords(each)}</li>
            ))}
          </ul>
          <Mistakes view={view} />
          <Search view={view} goesOn={goesOn} setGoesOn={setGoesOn} />
        </>
      )}
    </Section>
  );
}

function Mistakes({ view }: { readonly view: ModelCheckView }) {
  const { mistakes, odd, thought, to_think: toThink } = view;
  if (mistakes.length === 0)
    return thought < toThink ? null : <p>No single mistake explains them: there may be two, or the readings are of another board.</p>;
  return (
    <>
      <h3>If it is wrong at one place, it is most likely here</h3>
      <ol className="check-list">
        {mistakes.map(({ net, chance, text, explains, spoils, next }) => (
          <li key={net}>
            <strong>{net.toUpperCase()}</strong> ({Math.round(100 * chance)} %): {text} That explains {explains} of the {odd.length}
            {spoils > 0 && `, and speaks against ${counted(spoils, 'reading')} that ${spoils === 1 ? 'fits' : 'fit'} now`}. {next}
          </li>
        ))}
      </ol>
      <p className="small">
        You know better? A reading may be wrong as well: measure its point again on another good board, and it counts with the others.
      </p>
    </>
  );
}

function Search({ view, goesOn, setGoesOn }: CheckNetlistProps) {
  const { thought, to_think: toThink } = view;
  if (thought >= toThink) return <p className="small muted">{counted(toThink, 'mistake')} that may be were thought of.</p>;
  return (
    <>
      <output className="waiting">
        {thought} of {counted(toThink, 'mistake')} that may be were thought of.
      </output>
      <button type="button" onClick={() => setGoesOn(!goesOn)}>
        {goesOn ? 'Stop' : 'Go on'}
      </button>
    </>
  );
}
