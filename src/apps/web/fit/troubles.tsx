/** What could not be read, and what to do about it. */
export function Troubles({ troubles }: { readonly troubles: readonly string[] }) {
  if (troubles.length === 0) return null;
  return (
    <div role="alert" className="trouble">
      {troubles.map((trouble) => (
        <p key={trouble}>{trouble}</p>
      ))}
    </div>
  );
}
