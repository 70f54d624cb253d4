import { useState } from 'react';
import { Link } from 'wouter';
import type { ModelCheckView } from '../../../bench/views/index.ts';
import { counted } from '../format/number.ts';
import { money } from '../format/money.ts';
import { LEVEL_WORDS } from '../models/level-words.ts';
import { Answer } from '../ui/answer.tsx';
import { Section } from '../ui/section.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { useTitle } from '../ui/use-title.ts';
import { CheckNetlist } from './check-netlist.tsx';
import { TakeCircuit } from './take-circuit.tsx';
import { useModelCheck } from './use-model-check.ts';

/** What a model can and cannot do now, what would help most to add, and what in it cannot be true at once. */
export default function CheckPage({ id }: { readonly id: string }) {
  const [goesOn, setGoesOn] = useState(true);
  const check = useModelCheck(id, goesOn);
  useTitle(`Check of ${check.data?.name ?? 'a model'}`);
  return (
    <Answer query={check}>
      {(view) => (
        <>
          <header className="page-head">
            <p className="small">
              <Link href={`/models/${encodeURIComponent(id)}`}>{view.name}</Link>
            </p>
            <h1>What this model can do now</h1>
            <p className="small muted">
              Level {view.level}: {LEVEL_WORDS[view.level]}
            </p>
          </header>
          <Can view={view} />
          <Helpful view={view} />
          <Disagreements view={view} />
          <CheckNetlist view={view} goesOn={goesOn} setGoesOn={setGoesOn} />
          <TakeCircuit id={id} hasCircuit={view.level === 2} />
        </>
      )}
    </Answer>
  );
}

function Can({ view }: { readonly view: ModelCheckView }) {
  const { functions, faults, unknown_loads: loads } = view;
  return (
    <Section id="can" title="What it can and cannot do">
      <p>{faultWords(faults)}</p>
      {faults !== null && faults.largest.length > 0 && (
        <>
          <p>No check tells these apart:</p>
          <ul className="check-list">
            {faults.largest.map(({ name, others }) => (
              <li key={name}>
                {name}, and {counted(others, 'other')}
              </li>
            ))}
          </ul>
        </>
      )}
      {loads.length > 0 && (
        <p>
          Something that is not drawn hangs on {loads.map(({ rail, volts }) => `${rail.toUpperCase()} (${volts} V)`).join(', ')}. What it
          draws is only guessed, so belief there is wide, and a fault of it is called “something that is not drawn”.
        </p>
      )}
      <TableScroll label="Functions">
        <thead>
          <tr>
            <th scope="col">Function</th>
            <th scope="col">Told by</th>
          </tr>
        </thead>
        <tbody>
          {functions.map(({ id, name, by }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td>{by === 'circuit' ? 'its circuit: voltages and parts that it needs' : 'the blocks that it needs'}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </Section>
  );
}

const faultWords = (faults: ModelCheckView['faults']): string =>
  faults === null
    ? 'Its circuit is still being computed. Until then it is not known which faults can be told apart.'
    : `It knows ${counted(faults.count, 'fault')}, in ${counted(faults.groups, 'group')} that some check tells from each other.`;

function Helpful({ view }: { readonly view: ModelCheckView }) {
  const { points, points_for: fails, currency } = view;
  return (
    <Section id="helpful" title="What would help most to measure">
      {points.length === 0 ? (
        <p>
          {view.faults === null
            ? 'That is not known before its circuit is computed.'
            : 'No further reading of a good board would tell anything of a unit that fails.'}
        </p>
      ) : (
        <>
          <p>
            Readings of a good board that are missing, for a unit that fails at “{fails}”. The saving is what one reading is expected to
            spare on such a unit.
          </p>
          <TableScroll label="Points that would help">
            <thead>
              <tr>
                <th scope="col">Point</th>
                <th scope="col" className="num">
                  Saves
                </th>
                <th scope="col" className="num">
                  Tells
                </th>
                <th scope="col" className="num">
                  Takes
                </th>
              </tr>
            </thead>
            <tbody>
              {points.map((point) => (
                <tr key={point.id}>
                  <th scope="row">{point.name}</th>
                  <td className="num">{money(point.saving_minor, currency)}</td>
                  <td className="num">{point.bits} bits</td>
                  <td className="num">{point.minutes} min</td>
                </tr>
              ))}
            </tbody>
          </TableScroll>
        </>
      )}
    </Section>
  );
}

function Disagreements({ view }: { readonly view: ModelCheckView }) {
  const { problems, contradictions, mismatches } = view;
  if (problems.length + contradictions.length + mismatches.length === 0) return null;
  return (
    <Section id="disagreements" title="What does not go together">
      <ul className="check-list">
        {problems.map((text) => (
          <li key={text}>{text}</li>
        ))}
        {contradictions.map(({ text, next }) => (
          <li key={text}>
            {text} <strong>{next}</strong>
          </li>
        ))}
        {mismatches.map(({ text, mends }) => (
          <li key={text}>
            {text}
            <ul className="check-list">
              {mends.map((mend) => (
                <li key={mend}>{mend}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </Section>
  );
}
