/** The reasons behind an answer, folded away until asked for. */
export function Why({
  lines,
  summary = 'Why?',
  open = false,
}: {
  readonly lines: readonly string[];
  readonly summary?: string;
  readonly open?: boolean;
}) {
  if (lines.length === 0) return null;
  return (
    <details className="why" open={open}>
      <summary>{summary}</summary>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
