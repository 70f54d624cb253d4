export type PlaceName = 'scout' | 'pile' | 'bench' | 'drawer' | 'books' | 'models' | 'settings';

const PATHS: Readonly<Record<PlaceName, string>> = {
  scout: 'M10.5 4a6.5 6.5 0 1 1 0 13 6.5 6.5 0 0 1 0-13zM15.5 15.5 20 20M8 10.5h5',
  pile: 'M4 18h16M6 14h12M5 10h14M8 6h8',
  bench: 'M3 9h18M5 9v10M19 9v10M8 9V5h8v4M5 14h14',
  drawer: 'M4 4h16v16H4zM4 12h16M10 8h4M10 16h4',
  books: 'M5 4h9a3 3 0 0 1 3 3v13H8a3 3 0 0 1-3-3zM8 8h6M8 12h6M17 20h2',
  models: 'M6 3h12v18H6zM9 6h6v5H9zM9 15h2M13 15h2M9 18h2M13 18h2',
  settings: 'M4 7h9M17 7h3M4 17h3M11 17h9M15 5v4M9 15v4',
};

export function PlaceIcon({ name }: { readonly name: PlaceName }) {
  return (
    <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" className="place-icon">
      <path d={PATHS[name]} fill="none" stroke="currentColor" strokeWidth="1.7" strokeLinecap="round" strokeLinejoin="round" />
    </svg>
  );
}
