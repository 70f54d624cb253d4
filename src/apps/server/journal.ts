/** An error of late, as the owner is shown it: where it came up and of what kind it is, without its words. */
export interface ErrorNote {
  readonly at: string;
  readonly sentence: string;
  readonly kind: string;
}

/** What goes wrong on the server, as lines for programs and as a list for the owner. */
export interface Journal {
  readonly log: (sentence: string, error: unknown) => void;
  /** The newest first. */
  errors(): readonly ErrorNote[];
}

const NOTED = 50;

/**
 * `write` gets each trouble as plain fields. Words of errors are left out, as they may hold names, paths or what somebody typed; their kind, their
 * code and the places in the program that they passed stay.
 */
export function openJournal(write: (fields: Readonly<Record<string, unknown>>, sentence: string) => void, now: () => Date): Journal {
  const notes: ErrorNote[] = [];
  return {
    log(sentence, error) {
      const kind = kindOf(error);
      notes.unshift({ at: now().toISOString(), sentence, kind });
      notes.length = Math.min(notes.length, NOTED);
      write({ kind, stack: placesOf(error) }, sentence);
    },
    errors: () => notes,
  };
}

function kindOf(error: unknown): string {
  if (!(error instanceof Error)) return typeof error === 'string' && /^[a-z][a-z0-9-]{0,40}$/.test(error) ? error : 'unknown';
  return 'code' in error && typeof error.code === 'string' ? `${error.name} ${error.code}` : error.name;
}

/** The lines of the stack that name places of the program, without the folder that it lies in. */
function placesOf(error: unknown): string[] {
  const lines = error instanceof Error ? (error.stack ?? '').split('\n') : [];
  return lines
    .filter((line) => /^\s+at /.test(line))
    .slice(0, 12)
    .map((line) => line.trim().replace(/(?:file:\/\/)?\/[^ ()]*?\/((?:src|dist|node_modules)\/)/, '$1'));
}
