import { isAlias, isMap, isNode, isScalar, isSeq, type Document, type LineCounter, type Node } from 'yaml';

/** A place in a text, both from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/**
 * Where a path of keys and list positions stands in a YAML document: the key for what has one, else the entry. A path
 * that leads further than the document does (a missing field) is at the last thing on the way that is there.
 */
export function locate(doc: Document.Parsed, lines: LineCounter, path: readonly (string | number)[]): Place {
  let at: unknown = doc.contents;
  let offset = startOf(doc.contents) ?? 0;
  for (const key of path) {
    const found = child(isAlias(at) ? at.resolve(doc) : at, key);
    if (!found) break;
    offset = startOf(found.mark) ?? offset;
    at = found.value;
  }
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

function child(node: unknown, key: string | number): { readonly mark: unknown; readonly value: unknown } | undefined {
  if (isMap(node)) {
    const pair = node.items.find((item) => String(isScalar(item.key) ? item.key.value : item.key) === String(key));
    return pair && { mark: pair.key, value: pair.value };
  }
  const value = isSeq(node) ? node.items[Number(key)] : undefined;
  return value === undefined ? undefined : { mark: value, value };
}

const startOf = (node: unknown): number | undefined => (isNode(node) ? (node as Node).range?.[0] : undefined);
