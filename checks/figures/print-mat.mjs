// Prints a mat, given as JSON on standard input, by the built printer in a process of its own, as the server does; the PDF goes to standard output.
import { readFileSync, writeSync } from 'node:fs';
import { openPrinter } from '../../dist/edges/print/index.js';

const pdf = await openPrinter().mat(JSON.parse(readFileSync(0, 'utf8')));
for (let sent = 0; sent < pdf.length;) sent += writeSync(1, pdf, sent);
