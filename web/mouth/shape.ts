/** From a standing place to lines: outlines, folds, labels, the areas that can be touched. Deterministic; no two teeth alike. */
import { middle, size, stands, type Stand } from './anatomy.ts';
import { isCap, positionOf, quadrantOf } from './names.ts';
import { spaces, type PlaceKey } from './places.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface DrawnTooth {
  readonly key: PlaceKey;
  readonly kind: Stand['kind'];
  readonly at: Point;
  readonly outline: string;
  readonly folds: readonly string[];
  readonly label: Point;
  readonly touch: string;
  readonly reach: number;
}
export interface DrawnSpace {
  readonly key: PlaceKey;
  readonly at: Point;
  readonly touch: string;
  readonly tick: string;
}

const short = (n: number): string => n.toFixed(1);
const xy = (p: Point): string => `${short(p.x)} ${short(p.y)}`;
export const polygon = (points: readonly Point[]): string => `M${points.map(xy).join('L')}Z`;

/** A closed smooth line through points (Catmull-Rom, as cubic curves). */
export function smooth(points: readonly Point[]): string {
  const n = points.length;
  const p = (i: number): Point => points[(i + n) % n]!;
  const bend = (a: Point, b: Point, c: Point): Point => ({ x: b.x + (c.x - a.x) / 6, y: b.y + (c.y - a.y) / 6 });
  const curves = points.map((_, i) => `C${xy(bend(p(i - 1), p(i), p(i + 1)))} ${xy(bend(p(i + 2), p(i + 1), p(i)))} ${xy(p(i + 1))}`);
  return `M${xy(p(0))}${curves.join('')}Z`;
}
/** An open line through the middles of its points. */
export function open(points: readonly Point[]): string {
  const bends = points.slice(1, -1).map((q, i) => {
    const r = points[i + 2]!;
    return `Q${xy(q)} ${i === points.length - 3 ? xy(r) : `${short((q.x + r.x) / 2)} ${short((q.y + r.y) / 2)}`}`;
  });
  return `M${xy(points[0]!)}${bends.join('')}`;
}
/** A number in -1 to 1 that belongs to a tooth and a purpose, always the same. */
export function quirk(key: string, salt: number): number {
  let h = 2166136261 ^ salt;
  for (const c of key) h = Math.imul(h ^ c.charCodeAt(0), 16777619);
  h = Math.imul(h ^ (h >>> 15), 2246822507);
  return ((h ^ (h >>> 13)) >>> 0) / 2 ** 31 - 1;
}

/** From the tooth's own axes (out: towards cheek or lip; along: away from the front) to the drawing. */
function frame(stand: Stand, key: string): (out: number, along: number) => Point {
  const turn = ((stand.along + quirk(key, 1) * 2.5) * Math.PI) / 180;
  const t = { x: Math.cos(turn), y: Math.sin(turn) };
  const n = { x: -t.y, y: t.x };
  // Outward is up or down for the incisors, sideways for all that stands behind them.
  const outward = (stand.kind === 'incisor' ? n.y * (stand.y - size.height / 2) : n.x * (stand.x - middle)) >= 0 ? 1 : -1;
  return (out, along) => ({ x: stand.x + outward * n.x * out + t.x * along, y: stand.y + outward * n.y * out + t.y * along });
}

/** Outline in the tooth's own axes: a rounded block, a worn oval, a small point. */
function outline(stand: Stand, key: string, upper: boolean): readonly (readonly [number, number])[] {
  const { kind, position } = stand;
  const across = (stand.across / 2) * (1 + quirk(key, 2) * 0.04);
  const length = stand.length / 2 - (kind === 'cheek' ? 1.1 : 1.4);
  const steps = kind === 'cheek' ? 28 : 16;
  const power = kind === 'cheek' ? 0.42 : kind === 'incisor' ? 0.8 : 0.9;
  return Array.from({ length: steps }, (_, i) => {
    const angle = (2 * Math.PI * i) / steps;
    const bent = (v: number): number => Math.sign(v) * Math.abs(v) ** power;
    let out = bent(Math.cos(angle)) * across;
    let along = bent(Math.sin(angle)) * length;
    if (kind === 'cheek') {
      // Upper cheek teeth carry two ridges on the cheek side, lower ones a shallow groove towards the tongue.
      if (upper && out > 0) out += Math.cos((along / length) * Math.PI * 2) * -0.8;
      if (!upper && out < 0) out += Math.cos((along / length) * Math.PI) * 0.9;
      // The first narrows to the front, the last to the back.
      const narrow = position === 6 ? Math.max(0, -along / length) : position >= 11 ? Math.max(0, along / length) : 0;
      out *= 1 - 0.34 * narrow ** 1.6;
    }
    if (kind === 'incisor') along *= 1 + 0.08 * Math.sign(out) * Math.abs(Math.cos(angle));
    if (kind === 'canine' && along > 0) along *= 1.15;
    const wobble = 1 + quirk(key, 10 + (i % 7)) * 0.018;
    out *= wobble;
    along *= wobble;
    return [out, along] as const;
  });
}

type Place = (out: number, along: number) => Point;
/** A crescent that opens towards the cheek: the enamel of a cup. */
const crescent = (put: Place, at: number, deep: number, long: number): string =>
  `M${xy(put(deep * 0.5, at - long))}C${xy(put(-deep, at - long * 0.7))} ${xy(put(-deep, at + long * 0.7))} ${xy(put(deep * 0.5, at + long))}C${xy(put(-deep * 0.25, at + long * 0.4))} ${xy(put(-deep * 0.25, at - long * 0.4))} ${xy(put(deep * 0.5, at - long))}Z`;

function folds(stand: Stand, put: Place, upper: boolean): readonly string[] {
  const { across: a, length: l } = stand;
  if (stand.kind === 'incisor')
    return [
      smooth(
        [
          [0.1, -0.2],
          [0.2, 0],
          [0.1, 0.2],
          [-0.08, 0.16],
          [-0.08, -0.16],
        ].map(([o, s]) => put(o! * a, s! * l)),
      ),
    ];
  if (stand.kind !== 'cheek') return [];
  if (upper) return [crescent(put, -l * 0.2, a * 0.24, l * 0.14), crescent(put, l * 0.2, a * 0.24, l * 0.14)];
  const p = (o: number, s: number): string => xy(put(o * a, s * l));
  return [
    `M${p(0.02, -0.33)}C${p(0.3, -0.28)} ${p(0.24, -0.1)} ${p(-0.02, -0.04)}S${p(-0.3, 0.02)} ${p(-0.02, 0.08)}S${p(0.26, 0.3)} ${p(0.0, 0.34)}`,
  ];
}

/** How far out of the tooth its number stands. */
const labelOff = (stand: Stand): number => stand.across / 2 + (stand.kind === 'incisor' ? 13 : 18);

export function drawTooth(key: PlaceKey): DrawnTooth {
  const quadrant = quadrantOf(key);
  const found = stands[quadrant].find((s) => s.position === positionOf(key));
  if (!found) throw new Error(`The drawn mouth has no place for tooth ${key}.`);
  const upper = quadrant < 3;
  // A cap rides on its successor: the same place, a little smaller.
  const stand = isCap(key) ? { ...found, across: found.across * 0.72, length: found.length * 0.72 } : found;
  const put = frame(stand, key);
  const half = Math.max(found.length / 2, found.kind === 'canine' || found.kind === 'wolf' ? 14 : 0);
  const inner = -found.across / 2 - 3;
  const outer = labelOff(found) + (found.kind === 'incisor' ? 12 : 18);
  return {
    key,
    kind: stand.kind,
    at: { x: stand.x, y: stand.y },
    reach: found.across / 2,
    outline: smooth(outline(stand, key, upper).map(([o, s]) => put(o, s))),
    folds: folds(stand, put, upper),
    label:
      found.kind === 'incisor'
        ? put(labelOff(found), 0)
        : { x: found.x + Math.sign(found.x - middle) * labelOff(found), y: found.y + (isCap(key) ? 18 : 0) },
    touch: polygon([put(inner, -half), put(outer, -half), put(outer, half), put(inner, half)]),
  };
}

/** A gap lies between two teeth, and is touched on the tongue side, where nothing else stands. */
export function drawSpace([a, b]: readonly [string, string]): DrawnSpace {
  const of = (tooth: string): Stand => stands[quadrantOf(tooth)].find((s) => s.position === positionOf(tooth))!;
  const [one, two] = [of(a), of(b)];
  const put = frame(one, a);
  const putTwo = frame(two, b);
  const depth = -Math.max(one.across, two.across) / 2;
  const mid = (p: Point, q: Point): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const off = (d: number): Point => mid(put(depth - d, 0), putTwo(depth - d, 0));
  return {
    key: `${a}-${b}`,
    at: off(12),
    touch: polygon([put(depth - 3, 0), putTwo(depth - 3, 0), putTwo(depth - 27, 0), put(depth - 27, 0)]),
    tick: `M${xy(off(3))}L${xy(off(9))}`,
  };
}
export const drawnSpaces: readonly DrawnSpace[] = spaces.map(drawSpace);
