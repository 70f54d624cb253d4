/** A ring in a graph, in order, starting at the earliest of `nodes` that lies on it; undefined when there is none. */
export function findRing(nodes: readonly string[], next: (node: string) => readonly string[]): string[] | undefined {
  const done = new Set<string>();
  const walk = (node: string, trail: readonly string[]): string[] | undefined => {
    const at = trail.indexOf(node);
    if (at >= 0) return trail.slice(at);
    if (done.has(node)) return undefined;
    for (const following of next(node)) {
      const ring = walk(following, [...trail, node]);
      if (ring) return ring;
    }
    done.add(node);
    return undefined;
  };
  for (const node of nodes) {
    const ring = walk(node, []);
    if (ring) return ring;
  }
  return undefined;
}
