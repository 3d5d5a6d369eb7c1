/** Words compared, and figures with their spread. */

const SMALL = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** The ways in which one spoken word is written: none of them is an error of hearing. */
const SPELT: Readonly<Record<string, string>> = {
  o: 'oh',
  zero: 'oh',
  mm: 'millimetre',
  mil: 'millimetre',
  mils: 'millimetre',
  mill: 'millimetre',
  mills: 'millimetre',
  millimeter: 'millimetre',
  millimeters: 'millimetre',
  millimetres: 'millimetre',
  centimeter: 'centimetre',
  color: 'colour',
  molds: 'moulds',
  gray: 'grey',
  okay: 'ok',
  vet: 'vet',
  percent: 'per cent',
  ulcerations: 'ulcerations',
};

/** "106" is "one oh six", "12" is "twelve". */
function numberWords(figures: string): string {
  const n = Number(figures);
  if (figures.length === 3 && figures[0] !== '0') {
    const rest = Number(figures.slice(1));
    return `${SMALL[Number(figures[0])]} ${rest < 10 ? `oh ${SMALL[rest] ?? ''}` : numberWords(String(rest))}`;
  }
  if (n < 20) return SMALL[n] ?? figures;
  if (n < 100) return `${TENS[Math.floor(n / 10)]} ${n % 10 === 0 ? '' : SMALL[n % 10]}`.trim();
  return [...figures].map((digit) => SMALL[Number(digit)]).join(' ');
}

/** Bare words of a text, numbers as words, spellings made one. */
export function bareWords(text: string): string[] {
  return text
    .toLowerCase()
    .replace(/(\d)\.(\d)/g, '$1 point $2')
    .replace(/(\d)([a-z])/g, '$1 $2')
    .replace(/[^a-z0-9' ]+/g, ' ')
    .replace(/\d+/g, numberWords)
    .split(/\s+/)
    .filter((word) => word !== '')
    .flatMap((word) => (SPELT[word] ?? word).split(' '));
}

export type Alignment = {
  readonly errors: number;
  readonly words: number;
  /** Words of the truth that were not heard as they are. */ readonly missed: readonly string[];
};

/** Least substitutions, insertions and deletions that turn the truth into what was heard (Levenshtein 1966). */
export function align(truth: readonly string[], heard: readonly string[]): Alignment {
  const cost = Array.from({ length: truth.length + 1 }, (_, i) =>
    Array.from({ length: heard.length + 1 }, (_unused, j) => (i === 0 ? j : j === 0 ? i : 0)),
  );
  const at = (i: number, j: number): number => cost[i]?.[j] ?? Infinity;
  for (let i = 1; i <= truth.length; i += 1) {
    for (let j = 1; j <= heard.length; j += 1) {
      const same = truth[i - 1] === heard[j - 1] ? 0 : 1;
      (cost[i] as number[])[j] = Math.min(at(i - 1, j - 1) + same, at(i - 1, j) + 1, at(i, j - 1) + 1);
    }
  }
  const missed: string[] = [];
  for (let i = truth.length, j = heard.length; i > 0;) {
    const same = truth[i - 1] === heard[j - 1] ? 0 : 1;
    if (j > 0 && at(i, j) === at(i - 1, j - 1) + same) {
      if (same === 1) missed.push(truth[i - 1] as string);
      i -= 1;
      j -= 1;
    } else if (at(i, j) === at(i - 1, j) + 1) {
      missed.push(truth[i - 1] as string);
      i -= 1;
    } else j -= 1;
  }
  return { errors: at(truth.length, heard.length), words: truth.length, missed };
}

/** Value below which so much of the sorted values lie (nearest rank). */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? NaN;
}

/** 95 % interval of a share (Wilson 1927). */
export function wilson(hits: number, of: number): readonly [number, number] {
  if (of === 0) return [0, 1];
  const z = 1.96,
    p = hits / of,
    scale = 1 + (z * z) / of;
  const middle = (p + (z * z) / (2 * of)) / scale;
  const half = (z / scale) * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of));
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}
