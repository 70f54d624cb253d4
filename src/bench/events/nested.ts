/** Whether lists and objects stand in each other more than `levels` deep. Goes level by level, for recursion itself would exhaust the stack. */
export function isNestedDeeperThan(levels: number, value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; depth <= levels; depth++) {
    level = level.flatMap((each) => (typeof each === 'object' && each !== null ? Object.values(each) : []));
    if (level.length === 0) return false;
  }
  return true;
}
