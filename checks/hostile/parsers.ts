import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { patternFromCsv } from '../../src/bench/fit/index.ts';
import { readingsFrom, resolveModels } from '../../src/bench/models/index.ts';
import { parseReading } from '../../src/bench/parse-reading.ts';
import { listingsFromCsv, readListing } from '../../src/bench/scout/index.ts';
import { smallModels } from '../../src/bench/testing/small-model.ts';
import { compileCircuit, readNetlist } from '../../src/core/circuit/index.ts';
import { readKicadMod } from '../../src/core/fit/index.ts';
import { readLog } from '../../src/core/rework/index.ts';
import { bundleContents, sha256 } from '../../src/edges/bundle/bundle.ts';
import { readCsv } from '../../src/edges/models/read-csv.ts';
import { readYaml } from '../../src/edges/models/read-yaml.ts';

/** A reader of text from outside, with good texts to start from. */
export interface Parser {
  readonly name: string;
  readonly seeds: readonly string[];
  /** Words of the language itself. */
  readonly words: readonly string[];
  /** Reads a text: what it says when it refuses, null when it takes it. Whatever it throws is a fault of the reader. */
  readonly read: (text: string) => string | null;
}

const lamp = smallModels().get('lamp-1')!;
const shipped = (name: string): string => readFileSync(join(import.meta.dirname, '../../models', name), 'utf8');
const linesOf = (text: string, from: number, to: number): string => text.split('\n').slice(from, to).join('\n');
const firstMessage = (problems: readonly { readonly message: string }[]): string | null => problems[0]?.message ?? null;

const netlist: Parser = {
  name: 'netlist',
  seeds: [
    'divider\nV1 in 0 5\nR1 in mid 10k\nR2 mid 0 {2*rx}\n.param rx=5k\n.temp 40\n.end',
    'sub\n.subckt stage a b r=1k\nR1 a b {r}\nC1 b 0 1u\nD1 0 b dd\n.ends\n.model dd d(is=1e-14 n=1.1)\nX1 in out stage r=2k\nX2 out 0 stage\nV1 in 0 dc 3.3\n.op',
    'mixed\nQ1 c b 0 qn\n.model qn npn bf=200\nM1 d g 0 0 mm\n.model mm nmos vto=1.2 kp=2m\nE1 e 0 c b 10\nG1 0 c e 0 1m\nF1 d 0 V1 2\nV1 g 0 5\nS1 d e g 0 sw\n.model sw sw(vt=1 ron=1)\n* note\n+ ic=1',
    linesOf(shipped('tern-tn20/board.cir'), 0, 18),
  ],
  words: [
    'R9 a b 1',
    '.subckt',
    '.ends',
    'X1 X1',
    '.model',
    '.param a={a}',
    '{1/0}',
    '{((((',
    "'2*",
    '+',
    '1meg',
    '1e',
    'gnd',
    '.end',
    '.control',
    '\n',
    'L1 a a 0',
  ],
  read: (text) => {
    const read = readNetlist(text);
    if (!read.ok) return firstMessage(read.problems);
    compileCircuit(read.netlist);
    return null;
  },
};

const landPattern: Parser = {
  name: 'land pattern',
  seeds: [
    '(footprint "S" (layer "F.Cu") (pad "1" smd rect (at 0 0 90) (size 0.5 1.2) (layers "F.Cu")) (pad 2 thru_hole oval (at 1 2) (size 2 1) (drill oval 1.4 0.6 (offset 0.1 0)) (layers *.Cu)))',
    '(module X (pad "1" smd custom (at 0 0) (size 1 1) (layers "F.Cu") (options (anchor rect)) (primitives (gr_poly (pts (xy 0 0) (xy 2 0) (xy 2 -1)) (width 0)))))',
  ],
  words: [
    '(pad',
    '"',
    '\\"',
    ')',
    '(at 1e9 nan)',
    'smd',
    'np_thru_hole',
    'custom',
    '(xy 0 0)',
    '(size -1 0)',
    'roundrect_rratio',
    '(drill',
  ],
  read: (text) => {
    const read = readKicadMod(text);
    return read.ok ? null : read.message;
  },
};

const table: Parser = {
  name: 'CSV',
  seeds: [
    'title,price,postage,tax,currency,rate,seller,text,closes_at,count,model\nDead player,12.50,3,,GBP,,Quay,"no sound, cracked",2026-03-01T18:30+00:00,2,lamp-1\n',
    'pin,x_mm,y_mm,w_mm,h_mm\n1,0,0,0.5,1.2\n2,0.8,0,0.5,1.2\n',
    'board;point;mode;value;unit\ngood-1;VBAT;volts;3,867;V\ngood-1;V50-R;ohms;OL;kΩ\n',
  ],
  words: [',', ';', '""', '"', '\r\n', '=1+1', "'=", '1,5', '1.000,00', 'price', 'x_mm', 'OL', '\t', 'GBP', 'JPY', 'board'],
  read: (text) => {
    const { rows, commaIsDecimal } = readCsv(text);
    const listings = listingsFromCsv(rows, 'GBP');
    const pads = patternFromCsv(rows, { name: 'pads', kind: 'other', basis: 'lands' });
    const readings = readingsFrom(rows, lamp.file, commaIsDecimal);
    return firstMessage([...listings.problems, ...pads.problems, ...readings.problems]);
  },
};

const chargeLog: Parser = {
  name: 'meter log',
  seeds: [
    `time_s,volts,amps\n${Array.from({ length: 14 }, (_, i) => `${i * 10},${(3 + i / 20).toFixed(2)},0.5`).join('\n')}`,
    `Datum;Zeit;U [V];I [mA]\n${Array.from({ length: 14 }, (_, i) => `01.05.2026;12:${String(i).padStart(2, '0')}:00;3,${i}0;500,0`).join('\n')}`,
  ],
  words: [',', ';', '\t', '12:00:00', '3,5', 'mV', 'OL', '-', 'time', 'volts', '1e99', 'NaN'],
  read: (text) => {
    const split = (plain: string, delimiter: string) => plain.split('\n').map((line) => line.split(delimiter));
    const log = readLog(text, { wanted: ['time', 'volts', 'amps'], split });
    return log.ok ? null : log.detail;
  },
};

/** As small as a model can be that is taken. */
const SMALL_MODEL = `format: 1
id: fuzzed
name: Lamp
level: 0
currency: GBP
prices: { working: 4000, spread: 0.2, for_parts: 800 }
opening_minutes: { open: 5, board_out: 10 }
unknown_rate: 0.05
blocks:
  - &c { id: cell, name: Cell, assembly: battery }
  - { id: bulb, name: Bulb }
slots:
  - { id: battery, name: Battery, value: 1000, minutes: 2 }
functions:
  - { id: light, name: Light, needs: [cell, bulb] }
faults:
  - { id: flat, block: cell, mode: dead, rate: 0.1, name: Cell is flat }
checks:
  - { id: try-light, name: Try it, minutes: 1, try: light }
remedies:
  - { id: new-cell, name: New cell, kind: replace, mends: { flat: 0.9 }, minutes: 2, stage: open }
`;

const model: Parser = {
  name: 'YAML',
  seeds: [linesOf(shipped('tern-tn10/model.yaml'), 3, 14), SMALL_MODEL],
  words: [
    '&a ',
    '*a',
    '!!js/function',
    '!!binary',
    '<<: *a',
    '|\n',
    '>-\n',
    '? ',
    '- - -',
    '{a: {a: ',
    '---\n',
    '...\n',
    '%YAML 1.1\n',
    'id: id: id:',
    'rate: .inf',
    'format: 2',
  ],
  read: (text) => {
    const read = readYaml(text);
    if (!read.ok) return firstMessage(read.problems);
    const { problems } = resolveModels(new Map([['fuzzed', read.value]]));
    return firstMessage([...problems.values()].flat());
  },
};

const listing: Parser = {
  name: 'listing text',
  seeds: [
    'Two dead lamps. One does not light, the other untested; no battery, shell cracked. Sold as is.',
    'Works fine apart from a scratch. I have no idea if the light works?',
  ],
  words: ['not', 'no', "doesn't", 'works', 'untested', '?', '.', 'one', 'the other', 'both', 'light', 'battery', 'never', '3 x', '&amp;'],
  read: (text) => {
    for (const { span, words } of readListing(text, lamp.file).claims)
      if (text.slice(span.from, span.to) !== words) throw new Error(`"${words}" is not what the text says there`);
    return null;
  },
};

const EVENT = {
  id: '019f0000-0000-7000-8000-000000000001',
  at: '2026-05-01T09:00:00Z',
  device: 'desk',
  version: 1,
};
const eventLines = [
  { ...EVENT, kind: 'note-written', body: { text: 'a note', item_id: 'blue' } },
  {
    ...EVENT,
    kind: 'lot-bought',
    body: {
      lot_id: 'lot-1',
      title: 'Two',
      seller: 'Q',
      price_minor: 2400,
      currency: 'GBP',
      items: [{ item_id: 'blue', name: 'Blue', model_id: 'lamp-1', expected_value_minor: 1 }],
    },
  },
  { ...EVENT, kind: 'reading-taken', body: { item_id: 'blue', point: 'VBAT', mode: 'volts', value: 3.3 } },
].map((event) => JSON.stringify(event));

const bundle: Parser = {
  name: 'bundle',
  seeds: [`${eventLines.join('\n')}\n`, ...eventLines.map((line) => `${line}\n`)],
  words: [
    '{',
    '}',
    '[',
    ']',
    '"',
    ':',
    ',',
    '\n',
    '"kind":"sold"',
    '"version":9',
    '"body":null',
    '1e400',
    '"__proto__":{}',
    '\\u0000',
    '\\ud800',
    'true',
    '-',
  ],
  read: (text) => {
    const lines = new TextEncoder().encode(text);
    const events = text.split('\n').filter((line) => line !== '').length;
    const manifest = { format: 'salvor-bench', version: 1, events, photos: 0, events_sha256: sha256(lines) };
    const files = new Map([
      ['manifest.json', new TextEncoder().encode(JSON.stringify(manifest))],
      ['events.jsonl', lines],
    ]);
    const read = bundleContents(files, true);
    return read.ok ? null : read.detail;
  },
};

const reading: Parser = {
  name: 'reading',
  seeds: ['3.28', '3,28 V', '512 mV', '0.512 diode', 'OL', '4k7', '12.5 kΩ', '140 mA'],
  words: ['k', 'm', 'M', 'Ω', 'V', 'diode', 'OL', '-', '.', ',', ' ', 'e'],
  read: (text) => {
    const read = parseReading(text);
    if (!read.ok) return read.message;
    if (read.value !== null && !Number.isFinite(read.value)) throw new Error(`"${text}" is read as ${read.value}`);
    return null;
  },
};

export const PARSERS: readonly Parser[] = [netlist, landPattern, table, model, bundle, listing, chargeLog, reading];
