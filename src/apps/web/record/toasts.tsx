import { useEffect } from 'react';

export interface Toast {
  readonly id: number;
  readonly text: string;
  readonly tone: 'plain' | 'bad';
  readonly action?: { readonly label: string; readonly run: () => void };
}

const SHOWN_MS = 8000;

/** The corner where the bench says what it has noted. What went wrong stays until it is put away. */
export function Toasts({ toasts, dismiss }: { readonly toasts: readonly Toast[]; readonly dismiss: (id: number) => void }) {
  return (
    <section className="toasts" aria-label="Messages" aria-live="polite">
      {toasts.map((toast) => (
        <ToastLine key={toast.id} toast={toast} dismiss={dismiss} />
      ))}
    </section>
  );
}

function ToastLine({ toast, dismiss }: { readonly toast: Toast; readonly dismiss: (id: number) => void }) {
  useEffect(() => {
    if (toast.tone === 'bad') return undefined;
    const timer = setTimeout(() => dismiss(toast.id), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [toast, dismiss]);
  const { action } = toast;
  return (
    <div className={`toast toast-${toast.tone}`}>
      <p>{toast.text}</p>
      {action && (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            dismiss(toast.id);
            action.run();
          }}
        >
          {action.label}
        </button>
      )}
      <button type="button" className="quiet" onClick={() => dismiss(toast.id)} aria-label="Put this message away">
        ×
      </button>
    </div>
  );
}
