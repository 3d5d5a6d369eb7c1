/**
 * It must not dictate to itself: which words heard while our own voice sounded are our own.
 * Pure. Errs towards "ours": such words stay visible as a marked leftover, whereas an item nobody spoke would be worse.
 */
const digits: Readonly<Record<string, string>> = {
  oh: '0', o: '0', zero: '0', one: '1', two: '2', three: '3', four: '4', five: '5', six: '6', seven: '7', eight: '8', nine: '9', ten: '10', eleven: '11', twelve: '12',
};
const sameWord: Readonly<Record<string, string>> = { mm: 'millimetre', mil: 'millimetre', mils: 'millimetre', millimeter: 'millimetre', millimeters: 'millimetre', millimetres: 'millimetre' };

/** A word, or a number spoken in several, with the places of its words in the utterance. */
interface Token { readonly text: string; readonly words: readonly number[] }

/** "One oh six." and "106" become the same token. */
const tokens = (words: readonly string[]): readonly Token[] => {
  const out: Token[] = [];
  words.forEach((word, i) => {
    for (const part of word.toLowerCase().split(/[^a-z0-9]+/).filter(Boolean)) {
      const number = digits[part] ?? (/^\d+$/.test(part) ? part : undefined);
      const last = out.at(-1);
      if (number !== undefined && last && /^\d+$/.test(last.text)) out[out.length - 1] = { text: last.text + number, words: [...last.words, i] };
      else out.push({ text: number ?? sameWord[part] ?? part, words: [i] });
    }
  });
  return out;
};

const reward = 2;
const penalty = 1;

/** The stretch of `heard` that runs most like `own` (local alignment, Smith and Waterman 1981); null when fewer than two words agree and it is not all of it. */
const bestRun = (own: readonly Token[], heard: readonly Token[]): readonly [from: number, to: number] | null => {
  /** The ear may have opened in the middle of a number, or closed in it. */
  const same = (a: string, b: string, i: number): boolean =>
    a === b || (/^\d+$/.test(a + b) && ((i === 0 && a.endsWith(b)) || (i === heard.length - 1 && a.startsWith(b))));
  interface Cell { readonly score: number; readonly from: number; readonly agree: number }
  const start = (from: number): Cell => ({ score: 0, from, agree: 0 });
  let best: Cell & { readonly to: number } = { ...start(0), to: 0 };
  let above: readonly Cell[] = Array.from({ length: own.length + 1 }, () => start(0));
  heard.forEach((token, i) => {
    const row: Cell[] = [start(i + 1)];
    own.forEach((ours, j) => {
      const diagonal = above[j]!;
      const agrees = same(ours.text, token.text, i);
      const ways: readonly Cell[] = [
        { score: diagonal.score + (agrees ? reward : -penalty), from: diagonal.from, agree: diagonal.agree + (agrees ? 1 : 0) },
        { ...above[j + 1]!, score: above[j + 1]!.score - penalty },
        { ...row[j]!, score: row[j]!.score - penalty },
        start(i + 1),
      ];
      const cell = ways.reduce((a, b) => (b.score > a.score ? b : a));
      row.push(cell);
      if (cell.score > best.score) best = { ...cell, to: i + 1 };
    });
    above = row;
  });
  const all = best.from === 0 && best.to === heard.length;
  return best.agree >= 2 || (best.agree === 1 && all) ? [best.from, best.to] : null;
};

const oursAmong = (own: readonly Token[], heard: readonly Token[]): readonly Token[] => {
  const run = heard.length > 0 ? bestRun(own, heard) : null;
  if (!run) return [];
  const [from, to] = run;
  return [...oursAmong(own, heard.slice(0, from)), ...heard.slice(from, to), ...oursAmong(own, heard.slice(to))];
};

/**
 * For each word heard, whether it is ours. `spoken` are the sentences our own voice said lately, in order.
 * A word misheard between two of ours counts as ours; a tooth, a side or a number that stands outside such a run does not.
 */
export const ownWords = (spoken: readonly string[], heard: readonly string[]): readonly boolean[] => {
  const own = tokens(spoken.flatMap((sentence) => sentence.split(/\s+/)));
  const ours = new Set(oursAmong(own, tokens(heard)).flatMap((token) => token.words));
  return heard.map((_, i) => ours.has(i));
};
