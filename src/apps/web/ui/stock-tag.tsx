/** The stock number, as it stands on the paper tag tied to the thing. */
export function StockTag({ number }: { readonly number: number }) {
  return <span className="stock-tag">#{number}</span>;
}
