/**
 * The mouth, small, for paper: looking into it while facing the horse, its right on the viewer's left, upper rows above.
 * A tooth shows that something was said and how it stands; the words say what.
 */
import type { Item, Place } from '../../parser/contract/item.ts';
import { rowTeeth, type RowId } from '../../parser/lexicon/teeth.ts';
import { html, type Markup } from './html.ts';

const width = 210;
const height = 372;
const middle = width / 2;
/** Empty margin of the drawing left out on either side. */
const crop = 14;
interface Stand {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly along: number;
  readonly turn: number;
  readonly round: number;
}

/** Upper right quarter by position: x from the middle outwards, y from the top; sizes in drawing units. Drawn by eye, no source. */
const upper: Readonly<Record<number, Stand>> = {
  1: { x: 9.5, y: 15, across: 11, along: 16.5, turn: 4, round: 5 },
  2: { x: 26.5, y: 19, across: 11, along: 16, turn: 20, round: 5 },
  3: { x: 41, y: 29, across: 10.5, along: 15, turn: 46, round: 5 },
  4: { x: 50, y: 52, across: 7, along: 8, turn: 0, round: 4 },
  5: { x: 52.5, y: 74, across: 4.6, along: 5, turn: 0, round: 2.5 },
  6: { x: 55, y: 90, across: 17, along: 17, turn: 0, round: 5 },
  7: { x: 57, y: 107, across: 17.5, along: 14.5, turn: 0, round: 3.5 },
  8: { x: 58, y: 122.5, across: 17.5, along: 14, turn: 0, round: 3.5 },
  9: { x: 58, y: 137.5, across: 17, along: 13.5, turn: 0, round: 3.5 },
  10: { x: 57, y: 152, across: 16, along: 13, turn: 0, round: 3.5 },
  11: { x: 55, y: 166.5, across: 14, along: 14, turn: 0, round: 5 },
};
/** The lower rows stand closer together and their cheek teeth are narrower: common practice, no source. */
const lowered = (s: Stand, position: number): Stand => ({
  ...s,
  x: position >= 4 ? s.x * 0.86 : s.x * 0.92,
  across: position >= 6 ? s.across * 0.72 : s.across,
});

export function standOf(tooth: string): Stand | null {
  const quadrant = ((Number(tooth[0]) - 1) % 4) + 1;
  const position = Math.min(Number(tooth.slice(1)), 11);
  const base = upper[position];
  if (!base) return null;
  const low = quadrant > 2;
  const s = low ? lowered(base, position) : base;
  const left = quadrant === 1 || quadrant === 4;
  return { ...s, x: middle + (left ? -s.x : s.x), y: low ? height - s.y : s.y, turn: s.turn * (left ? -1 : 1) * (low ? -1 : 1) };
}

type Mark = 'present' | 'suspected' | 'absent';
interface Told {
  readonly mark: Mark | 'seen' | 'unseen';
  readonly named: boolean;
  readonly worked: boolean;
}
const rank: Readonly<Record<Told['mark'], number>> = { present: 4, suspected: 3, absent: 2, seen: 1, unseen: 0 };
/** Teeth named one by one are numbered; rows and regions only say that they were looked at, or marked. */
function teethOf(place: Place): readonly string[] {
  if ('teeth' in place) return place.teeth;
  if ('rows' in place) return place.rows.flatMap((row) => rowTeeth[row]);
  if ('spaces' in place) return [];
  const rows =
    place.region === 'mouth'
      ? Object.values(rowTeeth)
      : place.region === 'incisors'
        ? [rowTeeth['upper-incisors'], rowTeeth['lower-incisors']]
        : place.region === 'cheek-teeth'
          ? [rowTeeth['upper-right'], rowTeeth['upper-left'], rowTeeth['lower-left'], rowTeeth['lower-right']]
          : [];
  return rows.flat();
}

export function toldOfTeeth(items: readonly Item[]): ReadonlyMap<string, Told> {
  const told = new Map<string, Told>();
  for (const item of items) {
    if (!('place' in item) || !item.place || item.kind === 'follow-up') continue;
    const mark: Told['mark'] = item.kind === 'finding' ? item.presence : item.kind === 'treatment' ? 'seen' : 'unseen';
    const named = 'teeth' in item.place && !item.place.from && mark !== 'absent' && mark !== 'unseen';
    // A row or a region is marked as a whole, beside its teeth; they only say that they were looked at.
    const own: Told['mark'] = 'teeth' in item.place || mark === 'unseen' ? mark : 'seen';
    for (const tooth of teethOf(item.place)) {
      const old = told.get(tooth);
      told.set(tooth, {
        mark: old && rank[old.mark] > rank[own] ? old.mark : own,
        named: named || (old?.named ?? false),
        worked: (item.kind === 'treatment' && item.state === 'done' && !('region' in item.place)) || (old?.worked ?? false),
      });
    }
  }
  return told;
}
const strongest = (items: readonly Item[], keysOf: (place: Place) => readonly string[]): ReadonlyMap<string, Mark> => {
  const marks = new Map<string, Mark>();
  for (const item of items) {
    if (item.kind !== 'finding' || !item.place || item.condition === 'abnormality') continue;
    for (const key of keysOf(item.place)) {
      const old = marks.get(key);
      if (!old || rank[item.presence] > rank[old]) marks.set(key, item.presence);
    }
  }
  return marks;
};
const gapsOf = (place: Place): readonly string[] => ('spaces' in place ? place.spaces.map((pair) => pair.join('/')) : []);
const rowsOf = (place: Place): readonly RowId[] => ('rows' in place ? place.rows : []);

const n = (value: number): string => value.toFixed(1);
const sign = (mark: Mark, x: number, y: number, r: number): Markup =>
  mark === 'suspected'
    ? html`<g
        ><circle cx="${n(x)}" cy="${n(y)}" r="${r}" class="open" /><path
          d="M${n(x)} ${n(y - r)}A${r} ${r} 0 0 0 ${n(x)} ${n(y + r)}Z"
          class="full"
      /></g>`
    : html`<circle cx="${n(x)}" cy="${n(y)}" r="${r}" class="${mark === 'present' ? 'full' : 'open'}" />`;

/** A point beside a tooth, `off` beyond its outer side: cheek side of the cheek teeth, lip side of the incisors. */
function beside(tooth: string, s: Stand, off: number): readonly [number, number] {
  const left = s.x < middle;
  if (Number(tooth.slice(1)) > 3) return [s.x + (left ? -1 : 1) * (s.across / 2 + off), s.y];
  const turn = (Math.abs(s.turn) * Math.PI) / 180;
  const out = s.across / 2 + off;
  return [s.x + (left ? -1 : 1) * Math.sin(turn) * out, s.y + (s.y > height / 2 ? 1 : -1) * Math.cos(turn) * out];
}
function label(tooth: string, s: Stand): Markup {
  const [x, y] = beside(tooth, s, Number(tooth.slice(1)) <= 3 ? 11 : 15);
  return html`<text x="${n(x)}" y="${n(y + 3)}">${tooth}</text>`;
}
/** A whole row: a line along its outer side with one sign on it. */
function rowLine(row: RowId, mark: Mark): Markup {
  const teeth =
    row === 'upper-incisors'
      ? ['103', '102', '101', '201', '202', '203']
      : row === 'lower-incisors'
        ? ['403', '402', '401', '301', '302', '303']
        : rowTeeth[row];
  const points = teeth.map((tooth) => beside(tooth, standOf(tooth)!, 3.6));
  const [a, b] = [points[2]!, points[3]!];
  const mid = (i: number): string => `${n((points[i]![0] + points[i + 1]![0]) / 2)} ${n((points[i]![1] + points[i + 1]![1]) / 2)}`;
  const at = ([x, y]: readonly [number, number]): string => `${n(x)} ${n(y)}`;
  return html`<path
      class="row"
      d="M${at(points[0]!)}${[1, 2, 3, 4].map((i) => `Q${at(points[i]!)} ${i === 4 ? at(points[5]!) : mid(i)}`)}"
    />${sign(mark, (a[0] + b[0]) / 2, (a[1] + b[1]) / 2, 2.8)}`;
}
function drawn(tooth: string, told: Told | undefined): Markup {
  const s = standOf(tooth)!;
  const box = html`<rect x="${n(-s.across / 2)}" y="${n(-s.along / 2)}" width="${n(s.across)}" height="${n(s.along)}" rx="${s.round}" />`;
  const upright = Number(tooth.slice(1)) <= 3 ? s.turn + 90 : s.turn;
  const mark =
    told && (told.mark === 'present' || told.mark === 'suspected' || told.mark === 'absent')
      ? sign(told.mark, s.x, s.y, Math.min(3.6, s.across / 2 - 0.8))
      : null;
  return html`<g class="${!told ? 'left' : told.mark === 'unseen' ? 'left' : 'seen'}"
    ><g transform="translate(${n(s.x)} ${n(s.y)}) rotate(${n(upright)})">${box}</g
    >${mark}${told?.worked && html`<path class="work" d="M${n(s.x - 4)} ${n(s.y + s.along / 2 - 2.2)}h8" />`}${told?.named && label(tooth, s)}</g
  >`;
}
const always = [1, 2, 3, 4].flatMap((q) => [1, 2, 3, 6, 7, 8, 9, 10, 11].map((p) => `${q}${String(p).padStart(2, '0')}`));
const permanent = (tooth: string): string => (Number(tooth[0]) > 4 ? `${Number(tooth[0]) - 4}${tooth.slice(1)}` : tooth);

/** An SVG image with a name; canines and wolf teeth are drawn only where something was said of them. */
export function mouthDrawing(items: readonly Item[]): Markup {
  const told = toldOfTeeth(items);
  const caps = [...told.keys()].filter((tooth) => tooth !== permanent(tooth));
  const shown = [...new Set([...always.filter((tooth) => !caps.some((cap) => permanent(cap) === tooth)), ...told.keys()])].filter((tooth) =>
    standOf(tooth),
  );
  const gaps = [...strongest(items, gapsOf)].map(([key, mark]) => {
    const [a, b] = key.split('/').map((tooth) => standOf(tooth)) as [Stand | null, Stand | null];
    if (!a || !b) return null;
    const inward = key === '101/201' || key === '301/401' ? 0 : a.x < middle ? 1 : -1;
    const x = (a.x + b.x) / 2 + inward * (Math.max(a.across, b.across) / 2 + 6);
    const y = (a.y + b.y) / 2;
    return html`<g class="gap"
      >${sign(mark, x, y, 2.8)}<path d="M${n(x - inward * 2.8)} ${n(y)}h${n(-inward * 9)}" /><text
        x="${n(x + inward * 19.5)}"
        y="${n(y + 2.6)}"
        >${key}</text
      ></g
    >`;
  });
  const rows = [...strongest(items, rowsOf)].map(([row, mark]) => rowLine(row as RowId, mark));
  return html`<svg
    class="mouth"
    viewBox="${crop} -9 ${width - 2 * crop} ${height + 18}"
    role="img"
    aria-label="The mouth, facing the horse: teeth with something found are marked with a full dot, ruled out with a ring, suspected with a half dot."
  >
    <text class="side" x="${crop + 12}" y="${n(height / 2 + 3)}">right</text>
    <text class="side" x="${width - crop - 10}" y="${n(height / 2 + 3)}">left</text>
    ${rows}${shown.map((tooth) => drawn(tooth, told.get(tooth)))}${gaps}
  </svg>`;
}
