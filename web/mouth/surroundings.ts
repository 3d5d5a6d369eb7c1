/** What lies round the teeth: lips, palate, tongue, cheeks; the brackets that stand for whole rows. Our own lines. */
import { middle, size, stands } from './anatomy.ts';
import { open, polygon, smooth, type Point } from './shape.ts';
import { rowIds, type PlaceKey } from './places.ts';
import type { RowId } from '../../parser/lexicon/teeth.ts';

const p = (x: number, y: number): Point => ({ x, y });
const both = (half: readonly Point[]): readonly Point[] => [...half, ...[...half].reverse().map((q) => p(size.width - q.x, q.y))];

const lips = smooth(
  both([
    p(190, 37),
    p(146, 48),
    p(100, 84),
    p(66, 150),
    p(50, 230),
    p(56, 310),
    p(80, 384),
    p(82, 450),
    p(80, 550),
    p(96, 626),
    p(134, 680),
    p(190, 704),
  ]),
);
const palate = smooth(both([p(200, 97), p(164, 108), p(138, 150), p(128, 214), p(126, 284), p(150, 350), p(184, 380)]));
const tongue = smooth(both([p(206, 412), p(190, 424), p(174, 462), p(158, 510), p(155, 560), p(168, 612), p(196, 642)]));
const ridge = (y: number, wide: number): string =>
  `M${middle - wide} ${y}Q${middle - wide / 2} ${y - 11} ${middle - 4} ${y - 2}M${middle + 4} ${y - 2}Q${middle + wide / 2} ${y - 11} ${middle + wide} ${y}`;

export const backdrop: readonly { readonly d: string; readonly as: string }[] = [
  { d: lips, as: 'lips' },
  { d: palate, as: 'palate' },
  ...[138, 168, 200, 234, 268, 302, 334].map((y, i) => ({ d: ridge(y, 66 - Math.abs(i - 3) * 5), as: 'ridge' })),
  { d: tongue, as: 'tongue' },
  { d: `M${middle} 440C${middle - 3} 490 ${middle + 3} 550 ${middle} 616`, as: 'ridge' },
];

/** The horse's own right and left, and what the touchable places round the teeth are. */
export const captions: readonly { readonly text: string; readonly x: number; readonly y: number; readonly as: string }[] = [
  { text: 'horse’s right', x: 52, y: 22, as: 'side' },
  { text: 'horse’s left', x: size.width - 52, y: 22, as: 'side' },
  { text: 'cheek', x: 34, y: 470, as: 'caption' },
  { text: 'cheek', x: size.width - 34, y: 470, as: 'caption' },
  { text: 'palate', x: middle, y: 274, as: 'caption' },
  { text: 'tongue', x: middle, y: 560, as: 'caption' },
];

export interface Spot {
  readonly key: PlaceKey;
  readonly at: Point;
  readonly touch: string;
}
const around = (x: number, y: number, w: number, h: number): string =>
  polygon([p(x - w, y - h), p(x + w, y - h), p(x + w, y + h), p(x - w, y + h)]);

export const regionSpots: readonly Spot[] = [
  { key: 'region:palate', at: p(middle, 250), touch: around(middle, 244, 44, 96) },
  { key: 'region:tongue', at: p(middle, 536), touch: around(middle, 530, 36, 80) },
  { key: 'region:cheek:right', at: p(34, 446), touch: around(34, 446, 28, 40) },
  { key: 'region:cheek:left', at: p(size.width - 34, 446), touch: around(size.width - 34, 446, 28, 40) },
];

export interface RowSpot extends Spot {
  readonly line: string;
}
/** A bracket outside the numbers, one for each row, with its sign in the middle. */
function rowSpot(row: RowId): RowSpot {
  const key = `row:${row}`;
  if (row === 'upper-incisors')
    return { key, at: p(middle, 13), line: `M${middle - 76} 26Q${middle} 0 ${middle + 76} 26`, touch: around(middle, 13, 80, 13) };
  if (row === 'lower-incisors')
    return {
      key,
      at: p(middle, size.height - 14),
      line: `M${middle - 66} ${size.height - 26}Q${middle} ${size.height - 2} ${middle + 66} ${size.height - 26}`,
      touch: around(middle, size.height - 14, 70, 13),
    };
  const quadrant = ({ 'upper-right': 1, 'upper-left': 2, 'lower-left': 3, 'lower-right': 4 } as const)[row];
  const off = (quadrant < 3 ? 70 : 66) * (quadrant === 1 || quadrant === 4 ? -1 : 1);
  const line = stands[quadrant].filter((s) => s.position >= 6 && s.position <= 11).map((s) => p(s.x + off, s.y));
  const at = p((line[2]!.x + line[3]!.x) / 2, (line[2]!.y + line[3]!.y) / 2);
  return {
    key,
    at,
    line: open(line),
    touch: polygon([...line.map((q) => p(q.x - 13, q.y)), ...[...line].reverse().map((q) => p(q.x + 13, q.y))]),
  };
}
export const rowSpots: readonly RowSpot[] = rowIds.map(rowSpot);
