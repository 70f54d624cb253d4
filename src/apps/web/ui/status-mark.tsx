import type { Status } from '../../../bench/views/index.ts';
import { STATUS_WORDS } from '../format/words.ts';

export function StatusMark({ status }: { readonly status: Status }) {
  return <span className={`status status-${status}`}>{STATUS_WORDS[status]}</span>;
}
