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
  expect(JSON.parse(out)).toMatchObject({ fits: [{ file: 'table.csv', answer: 'fits', leastOverlap: 1 }] });
});

it('draws the best of them', async () => {
  const line = bench();
  await line.salvor('fit', 'place.kicad_mod', 'same.kicad_mod', '--picture', 'fit.svg');
  expect(new TextDecoder().decode(line.files.get('fit.svg'))).toMatch(/^<svg .*aria-label="SOCKET-3 over SOCKET-3: It fits\."/);
});

it.each([
  ['bad.csv', /line 2, h_mm "tall" is not a number/],
  ['bad.kicad_mod', /line 2, column 2: has no "layers"/],
  ['none.csv', /none\.csv cannot be read/],
])('refuses %s and says where', async (file, message) => {
  expect(await bench().salvor('fit', 'place.kicad_mod', file)).toMatchObject({ code: 2, err: expect.stringMatching(message) });
});
