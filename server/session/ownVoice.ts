/**
 * It must not dictate to itself: which words heard while our own voice sounded are our own.
 * Pure. Errs towards "ours": such words stay visible as a marked leftover, whereas an item nobody spoke would be worse.
 */
const digits: Readonly<Record<string, string>> = {
  oh: '0',
  o: '0',
  zero: '0',
  one: '1',
  two: '2',
  three: '3',
  four: '4',
  five: '5',
  six: '6',
  seven: '7',
  eight: '8',
  nine: '9',
  ten: '10',
  eleven: '11',
  twelve: '12',
};
const sameWord: Readonly<Record<string, string>> = {
  mm: 'millimetre',
  mil: 'millimetre',
  mils: 'millimetre',
  millimeter: 'millimetre',
  millimeters: 'millimetre',
  millimetres: 'millimetre',
};

/** Digits that make a whole tooth (Floyd 1991): what follows begins a number of its own. */
const wholeTooth = /^[1-8](0[1-9]|1[0-2])$/;

/** A word, or a number spoken in several, with the places of its words in the utterance. */
interface Token {
  readonly text: string;
  readonly words: readonly number[];
}

/** "One oh six." and "106" become the same token. */
const tokens = (words: readonly string[]): readonly Token[] => {
  const out: Token[] = [];
  words.forEach((word, i) => {
    for (const part of word
      .toLowerCase()
      .split(/[^a-z0-9]+/)
      .filter(Boolean)) {
      const last = out.at(-1);
      // "Two or six" is how "two oh six" is often written; "309 or 209" stays a choice.
      const number = digits[part] ?? (/^\d+$/.test(part) ? part : part === 'or' && /^\d$/.test(last?.text ?? '') ? '0' : undefined);
      if (number !== undefined && last && /^\d+$/.test(last.text) && !wholeTooth.test(last.text))
        out[out.length - 1] = { text: last.text + number, words: [...last.words, i] };
      else out.push({ text: number ?? sameWord[part] ?? part, words: [i] });
    }
  });
  return out;
};

const isNumber = (text: string): boolean => /^\d+$/.test(text);
const letters = (list: readonly Token[]): string => list.map((token) => token.text).join('');

/** Least letters changed to turn `heard` into some stretch of `own` (Sellers 1980), or into all of it, as a share of the longer. */
const unlike = (heard: string, own: string, whole: boolean): number => {
  let row = Array.from({ length: own.length + 1 }, (_, j) => (whole ? j : 0));
  for (let i = 0; i < heard.length; i++) {
    const next = [i + 1];
    for (let j = 0; j < own.length; j++) next.push(Math.min(row[j]! + (heard[i] === own[j] ? 0 : 1), row[j + 1]! + 1, next[j]! + 1));
    row = next;
  }
  return whole ? row[own.length]! / Math.max(1, heard.length, own.length) : Math.min(...row) / Math.max(1, heard.length);
};

/** A recogniser writes what it hears of a loudspeaker in a room in other words that sound alike. Chosen on the even half of the phrases. */
const soundsAlike = 0.4;
const endsAlike = 0.55;
const wholeAlike = 0.42;
/** Inside our own voice; a person who speaks over it is heard at 0.5 and more. Chosen on the even half as well. */
const insideAlike = 0.45;

const same = (ours: string, heard: string): boolean => {
  if (ours === heard) return true;
  // The ear may have opened, or closed, in the middle of a number.
  if (isNumber(ours) && isNumber(heard)) return heard.length > 1 && (ours.endsWith(heard) || ours.startsWith(heard));
  return !isNumber(ours) && !isNumber(heard) && Math.min(ours.length, heard.length) > 2 && unlike(heard, ours, true) <= soundsAlike;
};

const reward = 2;
const penalty = 1;
interface Run {
  readonly heard: readonly [number, number];
  readonly own: readonly [number, number];
}

/** The stretch of `heard` that runs most like `own` (local alignment, Smith and Waterman 1981); null when fewer than two words agree and it is not all of it. */
const bestRun = (own: readonly Token[], heard: readonly Token[]): Run | null => {
  interface Cell {
    readonly score: number;
    readonly from: number;
    readonly ownFrom: number;
    readonly agree: number;
  }
  const start = (from: number, ownFrom: number): Cell => ({ score: 0, from, ownFrom, agree: 0 });
  let best: Cell & { readonly to: number; readonly ownTo: number } = { ...start(0, 0), to: 0, ownTo: 0 };
  let above: readonly Cell[] = Array.from({ length: own.length + 1 }, (_, j) => start(0, j));
  heard.forEach((token, i) => {
    const row: Cell[] = [start(i + 1, 0)];
    own.forEach((ours, j) => {
      const diagonal = above[j]!;
      const agrees = same(ours.text, token.text);
      const ways: readonly Cell[] = [
        { ...diagonal, score: diagonal.score + (agrees ? reward : -penalty), agree: diagonal.agree + (agrees ? 1 : 0) },
        { ...above[j + 1]!, score: above[j + 1]!.score - penalty },
        { ...row[j]!, score: row[j]!.score - penalty },
        start(i + 1, j + 1),
      ];
      const cell = ways.reduce((a, b) => (b.score > a.score ? b : a));
      row.push(cell);
      if (cell.score > best.score) best = { ...cell, to: i + 1, ownTo: j + 1 };
    });
    above = row;
  });
  const all = best.from === 0 && best.to === heard.length;
  return best.agree >= 2 || (best.agree === 1 && all) ? { heard: [best.from, best.to], own: [best.ownFrom, best.ownTo] } : null;
};

/** Whether what stands at an end of a run, outside it, is the rest of our sentence misheard. A number of its own never is. */
const isRest = (heard: readonly Token[], own: readonly Token[]): boolean =>
  heard.length > 0 &&
  own.length > 0 &&
  !heard.some((token) => isNumber(token.text)) &&
  unlike(letters(heard), letters(own), true) <= endsAlike;

const oursAmong = (own: readonly Token[], heard: readonly Token[]): readonly Token[] => {
  const run = heard.length > 0 ? bestRun(own, heard) : null;
  if (!run) return [];
  const [from, to] = run.heard;
  const before = own.slice(Math.max(0, run.own[0] - from - 1), run.own[0]);
  const after = own.slice(run.own[1], run.own[1] + heard.length - to + 1);
  const [head, tail] = [heard.slice(0, from), heard.slice(to)];
  return [
    ...(isRest(head, before) ? head : oursAmong(own, head)),
    ...heard.slice(from, to),
    ...(isRest(tail, after) ? tail : oursAmong(own, tail)),
  ];
};

/** All of it sounds like some stretch of what we said. */
const isAll = (said: readonly Token[], own: readonly Token[], share: number): boolean =>
  own.length > 0 && unlike(letters(said), letters(own), false) <= share;

/**
 * For each word heard, whether it is ours. `spoken` are the sentences our own voice said lately, in order; `inside`: our voice sounded
 * from its first to its last word. Then all of it is ours unless it clearly differs: a number misheard in a room must not become a tooth.
 * A word misheard between two of ours counts as ours; a tooth, a side or a number that stands outside such a run does not.
 */
export const ownWords = (spoken: readonly string[], heard: readonly string[], inside = false): readonly boolean[] => {
  const own = tokens(spoken.flatMap((sentence) => sentence.split(/\s+/)));
  const said = tokens(heard);
  const foreign = said.some((token) => isNumber(token.text) && !own.some((ours) => same(ours.text, token.text)));
  const whole = inside ? isAll(said, own, insideAlike) : said.length > 1 && !foreign && isAll(said, own, wholeAlike);
  const ours = new Set((whole ? said : oursAmong(own, said)).flatMap((token) => token.words));
  return heard.map((_, i) => ours.has(i));
};
