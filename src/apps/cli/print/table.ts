/** Lines of a table with columns as wide as they need to be; numbers (columns named in `right`) end at the same place. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], right: readonly number[] = []): string[] {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => [...(row[column] ?? '')].length)));
  const line = (row: readonly string[]): string =>
    widths
      .map((width, column) => pad(row[column] ?? '', width, right.includes(column)))
      .join('  ')
      .trimEnd();
  return all.map(line);
}

function pad(text: string, width: number, isRight: boolean): string {
  const space = ' '.repeat(Math.max(0, width - [...text].length));
  return isRight ? space + text : text + space;
}

/** "37 %" for 0.37; chances that round to the ends without being there are told as such. */
export function percent(chance: number): string {
  if (chance > 0 && chance < 0.005) return '<1 %';
  if (chance < 1 && chance > 0.995) return '>99 %';
  return `${Math.round(chance * 100)} %`;
}
