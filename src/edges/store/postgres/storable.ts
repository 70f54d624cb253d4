/** PostgreSQL's texts cannot hold U+0000; it is kept as U+FFFD, which is how it is shown anyway. Bodies of events are JSON, where it is written out. */
export const storable = (text: string): string => text.replaceAll('\u0000', '\uFFFD');
