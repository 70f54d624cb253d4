import { Link, useLocation } from 'wouter';
import { PlaceIcon, type PlaceName } from './place-icon.tsx';

const PLACES: readonly { readonly name: PlaceName; readonly label: string; readonly to: string }[] = [
  { name: 'scout', label: 'Scout', to: '/scout' },
  { name: 'pile', label: 'Pile', to: '/pile' },
  { name: 'bench', label: 'Bench', to: '/bench' },
  { name: 'drawer', label: 'Drawer', to: '/drawer' },
  { name: 'books', label: 'Books', to: '/books' },
  { name: 'models', label: 'Models', to: '/models' },
];

/** The six places: at the side of a desk, along the bottom of a phone. */
export function Places() {
  const [location] = useLocation();
  return (
    <nav className="places" aria-label="Places">
      {PLACES.map(({ name, label, to }) => {
        const here = location === to || location.startsWith(`${to}/`);
        return (
          <Link key={to} href={to} className="place" {...(here ? { 'aria-current': 'page' as const } : {})}>
            <PlaceIcon name={name} />
            <span>{label}</span>
          </Link>
        );
      })}
    </nav>
  );
}
