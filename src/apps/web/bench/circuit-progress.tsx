import { useUnit } from './unit-context.ts';

/** How far the circuit is computed, while it is; answers hold meanwhile and get sharper. */
export function CircuitProgress() {
  const { file } = useUnit();
  const { knowledge } = file.belief;
  if (file.row.kind !== 'unit' || file.model.level < 2) return null;
  if (knowledge === null)
    return (
      <p className="circuit-progress small muted">
        The circuit of this board is not computed yet. Until then the advice goes by its blocks.
      </p>
    );
  const { done, rows } = knowledge;
  if (done >= rows) return null;
  return (
    <p className="circuit-progress small muted">
      <label htmlFor="circuit-done">
        The circuit is being computed: {done} of {rows} faults. Go on meanwhile; the advice gets sharper.
      </label>
      <progress id="circuit-done" value={done} max={rows} />
    </p>
  );
}
