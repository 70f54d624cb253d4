import type { Candidate, Told } from '../../../bench/fit/index.ts';
import type { DrawerView, FitLine } from '../../../bench/views/index.ts';
import { Fold } from '../ui/fold.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { KeepTerminals } from './keep-terminals.tsx';
import { mm } from './kind-words.ts';
import { ToldForm, type Asked } from './told-form.tsx';

interface FitAnswerProps {
  readonly line: FitLine;
  readonly candidate: Candidate;
  readonly placeName: string;
  readonly told: { readonly part: Told; readonly place: Told };
  readonly bags: DrawerView['bags'];
  readonly isOpen: boolean;
  readonly onTell: (part: Told, place: Told) => void;
}

/** One part: the answer, why, what to measure, every pad, and a picture of it over the pads. */
export function FitAnswer({ line, candidate, placeName, told, bags, isOpen, onTell }: FitAnswerProps) {
  const asked = { part: askedOf(line, 'part', told.part), place: askedOf(line, 'place', told.place) };
  return (
    <li>
      <details open={isOpen}>
        <summary>
          {line.name}
          {whereFrom(line)}: {line.sentence}
        </summary>
        <ul>
          {[...new Set([...line.reasons, ...line.asks].map(({ sentence }) => sentence))].map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        {line.picture !== '' && (
          <img
            className="fit-picture"
            alt={`${line.name} over ${placeName}: ${line.sentence}`}
            src={`data:image/svg+xml,${encodeURIComponent(line.picture)}`}
          />
        )}
        {line.pads.length > 0 && <PadTable line={line} />}
        <Fold title="Tell what the pads do not say">
          <ToldForm
            part={{ told: told.part, asked: asked.part, kind: candidate.pattern.kind }}
            place={{ told: told.place, asked: asked.place }}
            onTell={onTell}
          />
        </Fold>
        {line.from !== 'drawer' && bags.length > 0 && <KeepTerminals pattern={candidate.pattern} bags={bags} />}
      </details>
    </li>
  );
}

const whereFrom = ({ from, count, supplier, price }: FitLine): string => {
  if (from === 'drawer') return `, ${count} in the drawer`;
  const offer = [supplier, price].filter((word) => word !== '').join(', ');
  return offer === '' ? '' : `, ${offer}`;
};

/** What is asked of one of the two, or was told before. */
function askedOf({ asks }: FitLine, of: 'part' | 'place', told: Told): Asked {
  const isAsked = (code: string): boolean => asks.some((ask) => ask.code === code && (ask.of === of || ask.of === 'both'));
  return {
    height: isAsked('height') || told.heightMm !== null,
    mouth: isAsked('mouth') || told.facesDeg !== null,
    reach: isAsked('mouth-reach') || told.reachMm !== null,
    contacts: isAsked('contacts') || told.contacts !== null,
  };
}

const LEVELS = { most: 'generous', nominal: 'good', least: 'least' } as const;

function PadTable({ line: { name, pads } }: { readonly line: FitLine }) {
  const hasLevels = pads.some(({ level }) => level !== null);
  return (
    <TableScroll label={`${name}, pad by pad`}>
      <thead>
        <tr>
          <th scope="col">Pin</th>
          <th scope="col">On pad</th>
          <th scope="col">Covered</th>
          <th scope="col">Off by</th>
          <th scope="col">To bend</th>
          <th scope="col">Room at toe, heel, side</th>
          {hasLevels && <th scope="col">Solder fillet</th>}
        </tr>
      </thead>
      <tbody>
        {pads.map(({ pins, onto, covered, off_mm: off, bend_mm: bend, room, level }, i) => (
          // oxlint-disable-next-line react/no-array-index-key -- several lands may share a pin
          <tr key={i}>
            <th scope="row">{pins.join('/')}</th>
            <td>{onto.join('/') || 'none'}</td>
            <td>{Math.round(100 * covered)} %</td>
            <td>{mm(off)}</td>
            <td>{bend > 0.005 ? mm(bend) : '–'}</td>
            <td>{room ? [room.toe_mm, room.heel_mm, room.side_mm].map((each) => each.toFixed(2)).join(', ') + ' mm' : '–'}</td>
            {hasLevels && <td>{level === null ? 'too little' : LEVELS[level]}</td>}
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}
