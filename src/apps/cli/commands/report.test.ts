import { beforeEach, expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

let line: ReturnType<typeof commandLine>;
beforeEach(async () => {
  line = commandLine();
  await line.salvor('add', 'lot', '--title', 'A lamp', '--seller', 'Harbour Clearance', '--price', '24', '--items', 'Blue:lamp-1:20');
});
const written = (file: string): string => Buffer.from(line.files.get(file)!).toString();

it('a report is written as a sheet or as a page by the name of its file, with the way to the unit', async () => {
  expect((await line.salvor('report', '1', 'blue.pdf')).out).toBe('Condition report: Pocket lamp, #1 Blue is in blue.pdf.');
  expect(written('blue.pdf')).toMatch(/^%PDF .* http:\/\/127\.0\.0\.1:4780\/bench\//);
  await line.salvor('report', '1', 'blue.html', '--base', 'http://192.0.2.7:4780/');
  expect(written('blue.html')).toMatch(/^<h1>.* http:\/\/192\.0\.2\.7:4780\/bench\//);
  expect((await line.salvor('report', '9', 'nine.pdf')).code).toBe(2);
});

it('a story leaves money and names out unless they are asked for', async () => {
  await line.salvor('story', '1', 'plain.html');
  expect(written('plain.html')).toContain('Bought.');
  await line.salvor('story', '1', 'whole.html', '--money', '--persons');
  expect(written('whole.html')).toContain('Bought from Harbour Clearance for 24.00 GBP.');
});
