import { useLook } from './look.ts';

/** Turns light to dark and back. */
export function LookButton() {
  const [look, choose] = useLook();
  const dark = look === 'dark' || (look === 'system' && matchMedia('(prefers-color-scheme: dark)').matches);
  return (
    <button
      type="button"
      className="quiet icon"
      aria-label={dark ? 'Light look' : 'Dark look'}
      onClick={() => choose(dark ? 'light' : 'dark')}
    >
      <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
        <circle cx="12" cy="12" r="7.5" fill="none" stroke="currentColor" strokeWidth="1.7" />
        <path d="M12 4.5a7.5 7.5 0 0 1 0 15z" fill="currentColor" />
      </svg>
    </button>
  );
}
