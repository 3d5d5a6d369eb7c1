/** Shapes of the lexicon's tables. A table holds data; it decides nothing. */

/** T a tooth, S a space between two teeth, R a row, G a region, N needs no place. */
export type PlaceKind = 'T' | 'S' | 'R' | 'G' | 'N';
export type MeasureName = 'height' | 'depth' | 'width' | 'length' | 'angle' | 'excursion';

export interface ConditionEntry {
  readonly label: string;
  /** Short form for the screen and read-back, where people have one. */
  readonly short?: string;
  readonly group: 'wear' | 'gums' | 'tooth' | 'number' | 'bite' | 'soft' | 'horse' | 'normal';
  readonly places: readonly PlaceKind[];
  /** Spoken forms in the template language: "(a|b) [c] word(s)". */
  readonly say: readonly string[];
  /** Forms that by themselves rule the condition out ("unremarkable" for `abnormality`). */
  readonly absentSay?: readonly string[];
  /** Ambiguous short forms: only read when a tooth, a gap or the condition's region stands in the same phrase or is carried. */
  readonly withPlace?: readonly string[];
  /** The region the word itself names (excursion is of the jaw's movement): a place that was spoken with it. */
  readonly home?: string;
  readonly scale?: string;
  readonly measure?: MeasureName;
  readonly qualifiers?: readonly string[];
}
