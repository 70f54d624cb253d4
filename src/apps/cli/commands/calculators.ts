import type { Command } from 'commander';
import { CALCULATORS, reckoningText, reckonWith, type Calculator, type Field, type Outcome } from '../../../bench/calculators/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { misuse } from '../stop.ts';

/** Calculators of the bench, each a command of its own; they need no bench. */
export function calculatorCommands(program: Command, parts: CliParts): void {
  const reckon = program.command('reckon').description('calculators: track, wire, melting, marks of parts, divider, LED, battery');
  for (const calculator of CALCULATORS) calculatorCommand(reckon, parts, calculator);
}

function calculatorCommand(reckon: Command, parts: CliParts, calculator: Calculator): void {
  const command = reckon.command(calculator.id).description(calculator.about);
  for (const field of calculator.fields) command.option(`--${dashed(field.id)} <value>`, meaning(field), field.usual);
  command.action((_options: unknown, self: Command) => {
    const given = Object.fromEntries(calculator.fields.map(({ id }) => [id, self.opts<Record<string, string>>()[camel(id)]]));
    const outcome = reckonWith(calculator, given);
    if (!outcome.ok) throw misuse('bad-usage', { where: `--${dashed(outcome.field)}`, detail: outcome.message.replace(/\.$/, '') });
    if (self.optsWithGlobals().json) parts.out(JSON.stringify(outcome, null, 2));
    else parts.out(lines(outcome).join('\n'));
  });
}

const dashed = (id: string): string => id.replaceAll('_', '-');
const camel = (id: string): string => id.replaceAll(/_(\w)/g, (_, letter: string) => letter.toUpperCase());

const meaning = (field: Field): string =>
  field.kind === 'choice' ? `${field.label}: ${field.options.map(({ value }) => value).join(', ')}` : field.label;

function lines({ answers, notes }: Extract<Outcome, { ok: true }>): string[] {
  const told = answers.flatMap(({ label, said, reckoning }) => [
    `${label}: ${reckoningText(reckoning)}${said === undefined ? '' : `; ${said}`}`,
    `  ${reckoning.formula}; source: ${reckoning.source}`,
    `  ${reckoning.inRange ? 'Holds for' : 'OUTSIDE what it holds for'}: ${reckoning.range}. ${reckoning.why}`,
  ]);
  return [...told, ...notes];
}
