/** The mat for the fasteners of a model, to print at true scale on either paper. */
export function MatLinks({ modelId }: { readonly modelId: string }) {
  return (
    <>
      <p className="row">
        {(['A4', 'Letter'] as const).map((paper) => (
          <a
            key={paper}
            className="button"
            href={`/api/models/${encodeURIComponent(modelId)}/mat?paper=${paper}`}
            target="_blank"
            rel="noreferrer"
          >
            Mat to print, {paper}
          </a>
        ))}
      </p>
      <p className="small muted">Print it at 100 % and lay a ruler on its 100 mm: what is off there is off everywhere.</p>
    </>
  );
}
