import { boost, buck, charger, FUNCTIONS, linreg, load } from './board-laws-in-spice.ts';

/** Trees of rails in both languages: ours with behavioural parts, the general simulator's with expression sources. */
export interface Tree {
  readonly name: string;
  readonly ours: string;
  readonly theirs: string;
}

const tree = (name: string, shared: string, ours: string, theirs: readonly string[]): Tree => ({
  name,
  ours: `${name}\n${shared}\n${ours}`,
  theirs: `${name}\n${FUNCTIONS}\n${shared}\n${theirs.join('\n')}`,
});

const pocket = (name: string, extra: string, batteryV = 3.7): Tree =>
  tree(
    name,
    `VB cell 0 ${batteryV}\nRB cell bat 0.12\nRSW bat vsys 0.05\nREN vsys en 100k\nREN2 en 0 1meg\nRL3 v33 0 220\nRL5 v5 0 330\n${extra}`,
    'XB vsys v5 0 en BOOST vset=5 eff=0.85 uvlo=2.6 ilimit=0.8\nXL v5 v33 0 en LINREG vset=3.3 dropout=0.2 ilimit=0.25\nXP v33 0 LOAD i=60m von=1.8',
    [
      boost({ id: 'b', input: 'vsys', output: 'v5', enable: 'en' }, { vset: 5, eff: 0.85, uvlo: 2.6, ilimit: 0.8 }),
      linreg({ id: 'l', input: 'v5', output: 'v33', enable: 'en' }, { vset: 3.3, dropout: 0.2, ilimit: 0.25 }),
      load('p', 'v33', 0.06, 1.8),
    ],
  );

export const TREES: readonly Tree[] = [
  tree('one linear regulator in regulation', 'V1 in 0 5\nRL out 0 47', 'X1 in out 0 in LINREG vset=3.3 dropout=0.3 ilimit=0.3', [
    linreg({ id: 'a', input: 'in', output: 'out', enable: 'in' }, { vset: 3.3, dropout: 0.3, ilimit: 0.3 }),
  ]),
  tree('one linear regulator in dropout', 'V1 in 0 3.2\nRL out 0 22', 'X1 in out 0 in LINREG vset=3.3 dropout=0.3 ilimit=0.3', [
    linreg({ id: 'a', input: 'in', output: 'out', enable: 'in' }, { vset: 3.3, dropout: 0.3, ilimit: 0.3 }),
  ]),
  tree('one linear regulator at its current limit', 'V1 in 0 5\nRL out 0 2', 'X1 in out 0 in LINREG vset=3.3 dropout=0.3 ilimit=0.3', [
    linreg({ id: 'a', input: 'in', output: 'out', enable: 'in' }, { vset: 3.3, dropout: 0.3, ilimit: 0.3 }),
  ]),
  tree('one step-down converter', 'V1 in 0 7.4\nRL out 0 12', 'X1 in out 0 in BUCK vset=3.3 eff=0.9 uvlo=4 ilimit=1', [
    buck({ id: 'a', input: 'in', output: 'out', enable: 'in' }, { vset: 3.3, eff: 0.9, uvlo: 4, ilimit: 1 }),
  ]),
  tree('a charger that fills a low cell', 'V1 in 0 5\nVC oc 0 3.5\nRC oc bat 0.15', 'X1 in bat 0 CHARGER icc=0.4 vcv=4.2', [
    charger({ id: 'a', input: 'in', output: 'bat' }, { icc: 0.4, vcv: 4.2 }),
  ]),
  tree('a charger that holds a full cell', 'V1 in 0 5\nVC oc 0 4.18\nRC oc bat 0.15', 'X1 in bat 0 CHARGER icc=0.4 vcv=4.2', [
    charger({ id: 'a', input: 'in', output: 'bat' }, { icc: 0.4, vcv: 4.2 }),
  ]),
  pocket('a pocket board, healthy', ''),
  pocket('a pocket board with its 3.3 V rail shorted', 'RX v33 0 0.5'),
  pocket('a pocket board with its 5 V rail leaking', 'RX v5 0 40'),
  pocket('a pocket board that is not enabled', 'RX en 0 1k'),
  pocket('a pocket board on an empty cell', '', 2.3),
];
