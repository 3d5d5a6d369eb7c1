/** Counting what was right, missing and extra, and what follows from it. */
export interface Tally {
  readonly right: number;
  readonly missing: number;
  readonly extra: number;
}
export const emptyTally: Tally = { right: 0, missing: 0, extra: 0 };
export const addTally = (a: Tally, b: Partial<Tally>): Tally => ({
  right: a.right + (b.right ?? 0),
  missing: a.missing + (b.missing ?? 0),
  extra: a.extra + (b.extra ?? 0),
});

const share = (part: number, whole: number): number => (whole === 0 ? 1 : part / whole);
export const precision = ({ right, extra }: Tally): number => share(right, right + extra);
export const recall = ({ right, missing }: Tally): number => share(right, right + missing);
export const f1 = (tally: Tally): number => share(2 * tally.right, 2 * tally.right + tally.missing + tally.extra);

/** One line a kind, in columns. */
export function table(rows: readonly (readonly [string, Tally])[]): string {
  const line = (cells: readonly string[]): string =>
    `  ${cells.map((cell, i) => (i === 0 ? cell.padEnd(16) : cell.padStart(10))).join('')}`;
  return [
    line(['kind', 'right', 'missing', 'extra', 'precision', 'recall', 'F1']),
    ...rows.map(([kind, t]) =>
      line([kind, String(t.right), String(t.missing), String(t.extra), precision(t).toFixed(4), recall(t).toFixed(4), f1(t).toFixed(4)]),
    ),
  ].join('\n');
}
