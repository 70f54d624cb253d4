import { expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

const socket = (pitch: number): Uint8Array =>
  new TextEncoder().encode(
    `(footprint "SOCKET-3" (descr "a connector")\n${[0, 1, 2]
      .map((i) => ` (pad "${i + 1}" smd rect (at ${i * pitch} 0) (size 0.5 1.2) (layers "F.Cu"))`)
      .join('\n')})`,
  );
const bench = () => {
  const line = commandLine();
  line.files.set('place.kicad_mod', socket(0.8));
  line.files.set('same.kicad_mod', socket(0.8));
  line.files.set('wide.kicad_mod', socket(1));
  line.files.set('table.csv', new TextEncoder().encode('pin;x_mm;y_mm;w_mm;h_mm\n1;0;0;0,5;1,2\n2;0,8;0;0,5;1,2\n3;1,6;0;0,5;1,2'));
  line.files.set('bad.csv', new TextEncoder().encode('pin,x_mm,y_mm,w_mm,h_mm\n1,0,0,0.5,tall'));
  line.files.set('bad.kicad_mod', new TextEncoder().encode('(footprint "X"\n (pad "1" smd rect))'));
  return line;
};

it('tells which of several parts fits, the best first, and why the others do not', async () => {
  const { code, out } = await bench().salvor('fit', 'place.kicad_mod', 'wide.kicad_mod', 'same.kicad_mod');
  expect(code).toBe(0);
  const lines = out.split('\n');
  expect(lines[0]).toBe('same.kicad_mod: It fits.');
  expect(lines).toContain('wide.kicad_mod: It does not line up.');
  expect(lines).toContain('  The part has its pins 1 mm apart, the place 0.8 mm.');
});

it('reads tables of pads with decimal commas', async () => {
  const { out } = await bench().salvor('fit', 'place.kicad_mod', 'table.csv', '--json');
  expect(JSON.parse(out)).toMatchObject({
    done: true,
    fits: [{ name: 'table.csv', from: 'given', answer: 'fits', pads: [{ covered: 1 }, {}, {}] }],
  });
});

it('draws the best of them', async () => {
  const line = bench();
  await line.salvor('fit', 'place.kicad_mod', 'same.kicad_mod', '--picture', 'fit.svg');
  expect(new TextDecoder().decode(line.files.get('fit.svg'))).toMatch(/^<svg .*aria-label="same.kicad_mod over SOCKET-3: It fits\."/);
});

it.each([
  ['bad.csv', /line 2, h_mm "tall" is not a number/],
  ['bad.kicad_mod', /line 2, column 2: has no "layers"/],
  ['none.csv', /none\.csv cannot be read/],
])('refuses %s and says where', async (file, message) => {
  expect(await bench().salvor('fit', 'place.kicad_mod', file)).toMatchObject({ code: 2, err: expect.stringMatching(message) });
});

it('uses what pads do not say when it is told', async () => {
  const told = (place: string, part: string) =>
    bench().salvor('fit', 'place.kicad_mod', 'same.kicad_mod', '--place', place, '--part', part);
  expect((await told('height=2,mouth=90', 'height=2.5,mouth=90')).out).toContain('It is 0.5 mm too high for the room there.');
  expect((await told('height=2', 'height=1.9')).out).not.toContain('height');
  expect((await told('kind=ribbon-socket,contacts=top', 'kind=ribbon-socket,contacts=bottom')).out).toContain(
    'It touches the ribbon on the other side.',
  );
  expect(await told('hight=2', 'height=1')).toMatchObject({ code: 2, err: expect.stringContaining('"hight=2" is none of kind, height') });
  expect(await told('height=low', 'height=1')).toMatchObject({ code: 2, err: expect.stringContaining('height_mm "low" is not a number') });
});

it('looks through the drawer and a supplier’s list', async () => {
  const line = bench();
  await line.salvor('init', '--currency', 'GBP');
  await line.salvor('add', 'part', 'bulb-3v', '--name', 'Socket', '--count', '4', '--price', '2', '--pattern', 'same.kicad_mod');
  await line.salvor('add', 'part', 'wire', '--name', 'Wire', '--price', '1');
  line.files.set(
    'list.csv',
    new TextEncoder().encode(
      'part,sides,pins,pitch_mm,span_min_mm,foot_min_mm,width_min_mm,price\nWide,1,3,1,2,0.8,0.4,0.35\nOdd,3,3,1,2,0.8,0.4,1',
    ),
  );
  const { code, out } = await line.salvor('fit', 'place.kicad_mod', '--drawer', '--list', 'list.csv');
  expect(code).toBe(0);
  expect(out).toMatch(/^Socket \(4 in bag [-0-9a-f]+\): It fits\.$/m);
  expect(out).toMatch(/^Wide \(0\.35\): It does not line up\.$/m);
  expect(out).toContain('Nothing can be said of Wire: ');
  expect(out).toMatch(/^Left out: Line 3, sides is none of 1, 2, 4\./m);
  const wire = /wire +Wire .* (\S+)$/m.exec((await line.salvor('drawer')).out)![1]!;
  await line.salvor('add', 'bag', wire, '--pattern', 'wide.kicad_mod', '--place', 'box 9');
  expect((await line.salvor('fit', 'place.kicad_mod', '--drawer')).out).toContain('Wire (1 in bag');
  expect((await line.salvor('drawer')).out).toContain('box 9');
});

it('wants some parts', async () => {
  expect(await bench().salvor('fit', 'place.kicad_mod')).toMatchObject({ code: 2, err: expect.stringContaining('--drawer or --list') });
});
