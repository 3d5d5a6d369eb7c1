/**
 * Modified Triadan numbering of the horse (Floyd 1991): first digit the quadrant (1 upper right, 2 upper left,
 * 3 lower left, 4 lower right; 5 to 8 the same for deciduous teeth), then the position 01 to 11.
 */
const two = (n: number): string => String(n).padStart(2, '0');

/** The 44 permanent teeth: 101-111, 201-211, 301-311, 401-411. */
export const permanentTeeth: readonly string[] = [1, 2, 3, 4].flatMap((q) => Array.from({ length: 11 }, (_, i) => `${q}${two(i + 1)}`));
/** The 24 deciduous teeth: no canine, no wolf tooth, no molars. */
export const deciduousTeeth: readonly string[] = [5, 6, 7, 8].flatMap((q) => [1, 2, 3, 6, 7, 8].map((p) => `${q}${two(p)}`));
/** Legal only as a supernumerary behind an eleven. */
export const supernumeraryTeeth: readonly string[] = ['112', '212', '312', '412'];
export const rowIds = ['upper-right', 'upper-left', 'lower-left', 'lower-right', 'upper-incisors', 'lower-incisors'] as const;
export type RowId = (typeof rowIds)[number];
/** The permanent teeth of each row; canines and wolf teeth stand in the bars, in no row. */
const positions = (quadrants: readonly number[], from: number, to: number): readonly string[] => permanentTeeth.filter((t) => quadrants.includes(Number(t[0])) && Number(t.slice(1)) >= from && Number(t.slice(1)) <= to);
export const rowTeeth: Readonly<Record<RowId, readonly string[]>> = {
  'upper-right': positions([1], 6, 11), 'upper-left': positions([2], 6, 11), 'lower-left': positions([3], 6, 11), 'lower-right': positions([4], 6, 11),
  'upper-incisors': positions([1, 2], 1, 3), 'lower-incisors': positions([3, 4], 1, 3),
};
