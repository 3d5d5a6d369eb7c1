/**
 * Where the teeth stand, looking into the open mouth while facing the horse: its right on the viewer's left, the upper
 * arcade above, the incisors nearest (so outermost and largest), the last cheek teeth deepest (so innermost and smallest).
 * The lower rows stand closer together than the upper, the lower cheek teeth are narrower, the upper ones nearly square:
 * common practice of the trade, no source. Our own numbers, in drawing units; the left side is the right side mirrored.
 */
export const size = { width: 440, height: 740 } as const;
export const middle = size.width / 2;

export type ToothKind = 'incisor' | 'canine' | 'wolf' | 'cheek';
export interface Stand {
  readonly position: number;
  readonly kind: ToothKind;
  /** Centre. */
  readonly x: number;
  readonly y: number;
  /** Direction along the row, away from the front teeth, in degrees; 90 is down the page. */
  readonly along: number;
  /** Across the row (cheek or lip to tongue) and along it. */
  readonly across: number;
  readonly length: number;
}
interface Jaw {
  readonly front: readonly Stand[];
  readonly row: {
    readonly from: Point;
    readonly bend: Point;
    readonly to: Point;
    readonly lengths: readonly number[];
    readonly across: readonly [number, number];
  };
}
interface Point {
  readonly x: number;
  readonly y: number;
}

/** The horse's right side, drawn on the viewer's left. */
const upper: Jaw = {
  front: [
    { position: 1, kind: 'incisor', x: 199, y: 66, along: 176, across: 37, length: 40 },
    { position: 2, kind: 'incisor', x: 159, y: 75, along: 157, across: 35, length: 39 },
    { position: 3, kind: 'incisor', x: 125, y: 99, along: 130, across: 31, length: 36 },
    { position: 4, kind: 'canine', x: 103, y: 139, along: 106, across: 17, length: 21 },
    { position: 5, kind: 'wolf', x: 93, y: 174, along: 96, across: 12, length: 13 },
  ],
  row: { from: { x: 90, y: 209 }, bend: { x: 84, y: 305 }, to: { x: 130, y: 378 }, lengths: [40, 35, 33, 32, 30, 29], across: [47, 38] },
};
const lower: Jaw = {
  front: [
    { position: 1, kind: 'incisor', x: 202, y: 671, along: 186, across: 33, length: 36 },
    { position: 2, kind: 'incisor', x: 166, y: 662, along: 204, across: 31, length: 35 },
    { position: 3, kind: 'incisor', x: 137, y: 640, along: 232, across: 28, length: 32 },
    { position: 4, kind: 'canine', x: 122, y: 604, along: 258, across: 16, length: 20 },
    { position: 5, kind: 'wolf', x: 119, y: 575, along: 265, across: 10, length: 10 },
  ],
  row: { from: { x: 119, y: 546 }, bend: { x: 116, y: 466 }, to: { x: 151, y: 415 }, lengths: [36, 32, 30, 28, 27, 26], across: [36, 29] },
};

/** A point of a quadratic curve, and its direction there. */
function along({ from, bend, to }: Jaw['row'], t: number): Point & { along: number } {
  const at = (a: number, b: number, c: number): number => (1 - t) ** 2 * a + 2 * (1 - t) * t * b + t ** 2 * c;
  const slope = (a: number, b: number, c: number): number => 2 * (1 - t) * (b - a) + 2 * t * (c - b);
  return {
    x: at(from.x, bend.x, to.x),
    y: at(from.y, bend.y, to.y),
    along: (Math.atan2(slope(from.y, bend.y, to.y), slope(from.x, bend.x, to.x)) * 180) / Math.PI,
  };
}
/** Cheek teeth one behind the other, without a gap between them; a seventh, behind the eleven, where one was named. */
function cheekTeeth(jaw: Jaw, count: number): readonly Stand[] {
  const { lengths, across } = jaw.row;
  const middles = Array.from(
    { length: count },
    (_, i) => lengths.slice(0, Math.min(i, 5)).reduce((sum, l, k) => sum + (l + (lengths[k + 1] ?? l)) / 2, 0) + (i > 5 ? 26 : 0),
  );
  const whole = middles[5]!;
  return middles.map((m, i) => {
    const t = m / whole;
    return {
      position: 6 + i,
      kind: 'cheek',
      ...along(jaw.row, t),
      across: across[0] + (across[1] - across[0]) * t,
      length: lengths[i] ?? 22,
    };
  });
}
const right = (jaw: Jaw): readonly Stand[] => [...jaw.front, ...cheekTeeth(jaw, 7)];
const mirrored = (stand: Stand): Stand => ({ ...stand, x: size.width - stand.x, along: 180 - stand.along });

/** Every place a tooth may stand, by quadrant 1 to 4; position 12 only where a draft names it. */
export const stands: Readonly<Record<1 | 2 | 3 | 4, readonly Stand[]>> = {
  1: right(upper),
  2: right(upper).map(mirrored),
  3: right(lower).map(mirrored),
  4: right(lower),
};
