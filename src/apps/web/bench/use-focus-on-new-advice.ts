import { useEffect, useRef } from 'react';

/** When the card changes under the button that was pressed, the focus goes to the new card instead of getting lost. */
export function useFocusOnNewAdvice(adviceId: string): void {
  const shown = useRef(adviceId);
  useEffect(() => {
    if (shown.current === adviceId) return;
    shown.current = adviceId;
    if (document.activeElement === document.body) document.getElementById('what-next')?.focus();
  }, [adviceId]);
}
