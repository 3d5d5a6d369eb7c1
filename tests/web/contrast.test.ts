/** Contrast of every pair of colours in use, by WCAG 2.2 (success criteria 1.4.3, 1.4.6 and 1.4.11; relative luminance as defined there). */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const css = readFileSync(new URL('../../web/tokens.css', import.meta.url), 'utf8');
const tokens = new Map(
  [...css.matchAll(/--([\w-]+):\s*light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(([, name, paper, night]) => [
    name!,
    { paper: paper!, night: night! },
  ]),
);

/** WCAG 2.2, "relative luminance". */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((i) => parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
/** WCAG 2.2, "contrast ratio". */
export function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high! + 0.05) / (low! + 0.05);
}

test('the formula gives the published ends and a known middle', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#ffffff', '#ffffff')).toBe(1);
  // W3C's technique G18 and its working examples: #767676 is the lightest grey that passes 4.5 on white.
  expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
  expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
});

/** Words: 4.5 to 1 (AA). */
const words: readonly (readonly [string, string])[] = [
  ...['ground', 'sheet', 'raised'].flatMap((ground) => ['ink', 'soft', 'look', 'kept', 'now'].map((word) => [word, ground] as const)),
  ...['now-wash', 'look-wash', 'kept-wash'].map((ground) => ['ink', ground] as const),
  ['look', 'look-wash'],
  ['kept', 'kept-wash'],
  ['on-now', 'now-fill'],
  ['on-look', 'look-fill'],
  ['on-kept', 'kept-fill'],
  ['ground', 'ink'],
  ['ground', 'soft'],
  ['mark', 'tooth'],
  ['soft', 'flesh'],
  ['ink', 'flesh'],
  ['soft', 'flesh-deep'],
  ['now', 'flesh'],
];
/** Lines that carry a meaning, edges of controls, focus: 3 to 1 (1.4.11). */
const lines: readonly (readonly [string, string])[] = [
  ['edge', 'ground'],
  ['edge', 'sheet'],
  ['now', 'ground'],
  ['now', 'sheet'],
  ['tooth-line', 'flesh'],
  ['tooth-line', 'ground'],
  ['look-fill', 'ground'],
  ['kept-fill', 'sheet'],
];
/** Listening is read from three metres: AAA, 7 to 1 (1.4.6), in its night. */
const large: readonly (readonly [string, string])[] = [
  ['ink', 'ground'],
  ['ink', 'sheet'],
  ['soft', 'ground'],
  ['now', 'ground'],
  ['look', 'ground'],
  ['kept', 'ground'],
];

describe.each(['paper', 'night'] as const)('%s', (mood) => {
  const of = (name: string): string => {
    const found = tokens.get(name);
    if (!found) throw new Error(`tokens.css has no --${name}`);
    return found[mood];
  };
  test.each(words)('%s on %s reads', (a, b) => expect(contrast(of(a), of(b))).toBeGreaterThanOrEqual(4.5));
  test.each(lines)('%s on %s is seen', (a, b) => expect(contrast(of(a), of(b))).toBeGreaterThanOrEqual(3));
});
test.each(large)('listening at night: %s on %s reads from afar', (a, b) =>
  expect(contrast(tokens.get(a)!.night, tokens.get(b)!.night)).toBeGreaterThanOrEqual(7),
);
test('no stylesheet of the page names a colour of its own', () => {
  const rooms = ['base.css', 'mouth/mouth.css', 'check/check.css', 'book/book.css'].map((file) =>
    readFileSync(new URL(`../../web/${file}`, import.meta.url), 'utf8').replaceAll(/(backdrop|box-shadow)[^;]*;/g, ''),
  );
  for (const room of rooms) expect(room.match(/#[0-9a-f]{3,8}\b|rgba?\(|hsl/gi)).toBeNull();
});
