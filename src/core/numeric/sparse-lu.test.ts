import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream, SparseLu } from './index.ts';

/** A random sparse matrix as entries, with a strong diagonal somewhere in each row and column. */
function randomMatrix(size: number, density: number, seed: number) {
  const random = randomStream(seed);
  const shift = Math.floor(random() * size);
  const rows: number[] = [];
  const cols: number[] = [];
  const values: number[] = [];
  const add = (row: number, col: number, value: number): void => {
    rows.push(row);
    cols.push(col);
    values.push(value);
  };
  for (let i = 0; i < size; i++) {
    add(i, (i + shift) % size, 3 + random());
    for (let j = 0; j < size; j++) if (random() < density) add(i, j, random() - 0.5);
  }
  return { size, rows, cols, values };
}

function multiply(matrix: ReturnType<typeof randomMatrix>, x: Float64Array): Float64Array {
  const b = new Float64Array(matrix.size);
  matrix.values.forEach((value, i) => (b[matrix.rows[i]!]! += value * x[matrix.cols[i]!]!));
  return b;
}

function fill(lu: SparseLu, values: readonly number[]): void {
  lu.values.fill(0);
  values.forEach((value, i) => (lu.values[lu.slots[i]!]! += value));
}

describe('a sparse LU', () => {
  it('solves what it was made for, whatever the pattern', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.double({ min: 0, max: 0.3, noNaN: true }), fc.nat(), (size, density, seed) => {
        const matrix = randomMatrix(size, density, seed);
        const truth = Float64Array.from({ length: size }, (_, i) => Math.sin(i + 1));
        const lu = SparseLu.ordered(matrix, matrix.values)!;
        fill(lu, matrix.values);
        expect(lu.factor()).toBe(true);
        const x = new Float64Array(size);
        lu.solve(multiply(matrix, truth), x);
        x.forEach((value, i) => expect(value).toBeCloseTo(truth[i]!, 8));
      }),
      { numRuns: 200 },
    );
  });

  it('solves other values of the same pattern in the same order of pivots', () => {
    const matrix = randomMatrix(30, 0.1, 7);
    const lu = SparseLu.ordered(matrix, matrix.values)!;
    const other = { ...matrix, values: matrix.values.map((value, i) => value * (1 + 0.3 * Math.cos(i))) };
    const truth = Float64Array.from({ length: 30 }, (_, i) => i - 15);
    fill(lu, other.values);
    expect(lu.factor()).toBe(true);
    const x = new Float64Array(30);
    lu.solve(multiply(other, truth), x);
    x.forEach((value, i) => expect(value).toBeCloseTo(truth[i]!, 8));
  });

  it('finds a pivot off the diagonal, as the row of a voltage source needs', () => {
    const matrix = { size: 2, rows: [0, 1, 0], cols: [1, 0, 0], values: [1, 1, 1e-9] };
    const lu = SparseLu.ordered(matrix, matrix.values)!;
    fill(lu, matrix.values);
    expect(lu.factor()).toBe(true);
    const x = new Float64Array(2);
    lu.solve(Float64Array.of(2, 5), x);
    expect([...x]).toEqual([5, 2 - 5e-9]);
  });

  it('says that values are singular, and that a pattern is', () => {
    const matrix = { size: 2, rows: [0, 0, 1, 1], cols: [0, 1, 0, 1] };
    const lu = SparseLu.ordered(matrix, [1, 1, 1, 2])!;
    fill(lu, [1, 1, 1, 1]);
    expect(lu.factor()).toBe(false);
    expect(SparseLu.ordered({ size: 2, rows: [0], cols: [0] }, [1])).toBeUndefined();
  });
});

it('takes no order for a pattern that would fill up without end', () => {
  const size = 400;
  const places = Array.from({ length: size * size }, (_, i) => i);
  const dense = { size, rows: places.map((i) => Math.floor(i / size)), cols: places.map((i) => i % size) };
  const values = places.map((i) => (Math.floor(i / size) === i % size ? size : 1));
  expect(SparseLu.ordered(dense, values)).toBeUndefined();
});
