import { Suspense, useEffect, useRef, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import { useChanges } from '../api/use-changes.ts';
import { DemoBanner } from './demo-banner.tsx';
import { PageBoundary } from './page-boundary.tsx';
import { Places } from './places.tsx';
import { TopLine } from './top-line.tsx';

/** What stands around every page. */
export function Frame({ children }: { readonly children: ReactNode }) {
  useChanges();
  const [location] = useLocation();
  const main = useRef<HTMLElement>(null);
  const arrived = useRef(location);
  useEffect(() => {
    if (arrived.current === location) return;
    arrived.current = location;
    main.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, [location]);
  return (
    <div className="frame">
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <TopLine />
      <Places />
      <main id="main" tabIndex={-1} ref={main}>
        <DemoBanner />
        <PageBoundary key={location}>
          <Suspense fallback={<output className="waiting">One moment …</output>}>{children}</Suspense>
        </PageBoundary>
      </main>
    </div>
  );
}
