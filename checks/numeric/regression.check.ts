import { describe, expect, it } from 'vitest';
import { huberRegression, leastSquares, theilSenIntercept, theilSenSlope } from '../../src/core/numeric/index.ts';

/** Sources: SOURCE.md beside this file. */

/** Decimal digits in which a number agrees with the certified one. */
const digits = (value: number, certified: number): number =>
  value === certified ? 17 : -Math.log10(Math.abs(value - certified) / Math.abs(certified));

const NORRIS = {
  x: [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1,
    995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
  ],
  y: [
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3,
    998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
  ],
  coefficients: [-0.262323073774029, 1.00211681802045],
  errors: [0.232818234301152, 0.000429796848199937],
  spread: 0.884796396144373,
};

/** y, then six explaining columns that almost follow from each other. */
const LONGLEY = {
  rows: [
    [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
    [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
    [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
    [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
    [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
    [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
    [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
    [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
    [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
    [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
    [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
    [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
    [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
    [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
    [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
    [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
  ],
  coefficients: [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355,
  ],
  errors: [
    890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937, 455.478499142212,
  ],
  spread: 304.854073561965,
};

describe('least squares against the certified sets of NIST', () => {
  it('holds ten digits on Norris', () => {
    const fit = leastSquares(
      NORRIS.x.map((x) => [1, x]),
      NORRIS.y,
    )!;
    const all = [...fit.coefficients, ...fit.errors, fit.spread];
    const certified = [...NORRIS.coefficients, ...NORRIS.errors, NORRIS.spread];
    expect(Math.min(...all.map((value, i) => digits(value, certified[i]!)))).toBeGreaterThanOrEqual(10);
  });

  it('holds eight digits on Longley, whose columns almost coincide', () => {
    const fit = leastSquares(
      LONGLEY.rows.map(([, ...x]) => [1, ...x]),
      LONGLEY.rows.map(([y]) => y!),
    )!;
    const all = [...fit.coefficients, ...fit.errors, fit.spread];
    const certified = [...LONGLEY.coefficients, ...LONGLEY.errors, LONGLEY.spread];
    expect(Math.min(...all.map((value, i) => digits(value, certified[i]!)))).toBeGreaterThanOrEqual(8);
  });
});

/** Brownlee's stack loss: air, water, acid, loss (from memory; borne out by the published coefficients). */
const STACK = [
  [80, 27, 89, 42],
  [80, 27, 88, 37],
  [75, 25, 90, 37],
  [62, 24, 87, 28],
  [62, 22, 87, 18],
  [62, 23, 87, 18],
  [62, 24, 93, 19],
  [62, 24, 93, 20],
  [58, 23, 87, 15],
  [58, 18, 80, 14],
  [58, 18, 89, 14],
  [58, 17, 88, 13],
  [58, 18, 82, 11],
  [58, 19, 93, 12],
  [50, 18, 89, 8],
  [50, 18, 86, 7],
  [50, 19, 72, 8],
  [50, 19, 79, 8],
  [50, 20, 80, 9],
  [56, 20, 82, 15],
  [70, 20, 91, 15],
];

it('Huber regression of the stack loss agrees with R, which stops its rounds earlier, to 1e-4', () => {
  const fit = huberRegression(
    STACK.map(([air, water, acid]) => [1, air!, water!, acid!]),
    STACK.map((row) => row[3]!),
  )!;
  const published = [-41.026531052, 0.829373869, 0.926108184, -0.12784916];
  published.forEach((value, j) => expect(Math.abs(fit.coefficients[j]! / value - 1)).toBeLessThan(1e-4));
  expect(Math.abs(fit.scale / 2.440713795 - 1)).toBeLessThan(1e-3);
});

it("Sen's own example: slope 4, and an intercept by each of the two conventions", () => {
  const [x, y] = [
    [1, 2, 3, 4, 10, 12, 18],
    [9, 15, 19, 20, 45, 55, 78],
  ];
  expect(theilSenSlope(x!, y!)).toBe(4);
  expect(theilSenIntercept(x!, y!, 4)).toBe(6);
});
