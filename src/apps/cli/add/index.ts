import type { Command } from 'commander';
import type { CliParts } from '../cli-parts.ts';
import { addCommand } from './add-command.ts';
import { BUYING } from './buying.ts';
import { EVENT } from './event.ts';
import { EVIDENCE } from './evidence.ts';
import { ORDERING } from './ordering.ts';
import { PHOTO } from './photo.ts';
import { OPENING } from './opening.ts';
import { SELLING } from './selling.ts';
import { WORK } from './work.ts';

/** `salvor add …`: everything that can be noted. */
export function addCommands(program: Command, parts: CliParts): void {
  const add = program.command('add').description('notes what was bought, tried, seen, measured, done or sold; salvor add --help lists all');
  for (const spec of [...BUYING, ...ORDERING, ...OPENING, ...WORK, ...EVIDENCE, PHOTO, ...SELLING, EVENT]) addCommand(add, parts, spec);
}
