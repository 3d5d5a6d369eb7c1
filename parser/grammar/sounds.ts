/**
 * How English words sound, roughly: enough to say that "rants" is near "ramps". Letters become sound letters by rule;
 * the dictionary lacks one trade word in six, and where it has one it finds no more (tests/outside/pronunciations.test.ts, tests/bench/HEARING.md).
 */

/** In order; the first rule that fits at a place is taken. `$` ends a word, `^` begins one. */
const RULES: readonly (readonly [RegExp, string])[] = [
  [/^\^(kn|gn|pn)/, 'n'],
  [/^\^wr/, 'r'],
  [/^\^wh(?=o)/, 'h'],
  [/^\^ps/, 's'],
  [/^\^wh/, 'w'],
  [/^\^x/, 's'],
  [/^\^y/, 'y'],
  [/^\^/, ''],
  [/^tch/, 'C'],
  [/^ch(?=[rlmn])/, 'k'],
  [/^ch/, 'C'],
  [/^sch/, 'sk'],
  [/^sh/, 'S'],
  [/^(ti|si|ci)(?=on|al|an)/, 'S'],
  [/^th/, 'T'],
  [/^ph/, 'f'],
  [/^igh/, 'i'],
  [/^(aught|ought)/, 'ot'],
  [/^gh(?=t)/, ''],
  [/^gh/, ''],
  [/^ck/, 'k'],
  [/^qu/, 'kw'],
  [/^x/, 'ks'],
  [/^dge?/, 'j'],
  [/^g(?=[eiy])/, 'j'],
  [/^mb(?=\$)/, 'm'],
  [/^ng/, 'N'],
  [/^sc(?=[eiy])/, 's'],
  [/^c(?=[eiy])/, 's'],
  [/^c/, 'k'],
  [/^z/, 'z'],
  [/^(eau|oa|ow|oe|oh|o(?=[^aeiouwy]e[sd]?\$)|o(?=\$))/, 'O'],
  [/^(au|aw)/, 'o'],
  [/^(oo|ou|ue|ew|ui)/, 'u'],
  [/^(ee|ea|ie|ei|e(?=[^aeiouwy]e[sd]?\$))/, 'e'],
  [/^(ai|ay|ey)/, 'A'],
  [/^a(?=[^aeiouwy]e[sd]?\$)/, 'A'],
  [/^i(?=[^aeiouwy]e[sd]?\$)/, 'i'],
  [/^e(?=s?\$)/, ''],
  [/^e(?=d\$)/, ''],
  [/^y/, 'e'],
  [/^([bcdfghjklmnpqrstvwxz])\1/, '$1'],
  [/^\$/, ''],
];
const WHOLE: Readonly<Record<string, string>> = {
  one: 'won',
  two: 'tu',
  eight: 'At',
  four: 'for',
  of: 'ov',
  oh: 'O',
  o: 'O',
  the: 'Te',
  to: 'tu',
  too: 'tu',
  for: 'for',
  ate: 'At',
};

/** The sound of a word or of several, one letter a sound. */
export const soundOf = (text: string): string =>
  text
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '')
    .map(soundOfWord)
    .join('');

function soundOfWord(word: string): string {
  const whole = WHOLE[word];
  if (whole !== undefined) return whole;
  let rest = `^${word}$`,
    sound = '';
  while (rest !== '') {
    const rule = RULES.find(([pattern]) => pattern.test(rest));
    const taken = rule === undefined ? rest.charAt(0) : (rule[0].exec(rest) as RegExpExecArray)[0];
    if (rule === undefined) sound += taken;
    else sound += rule[1] === '$1' ? taken.charAt(0) : rule[1];
    rest = rest.slice(taken.length);
  }
  return sound;
}

const VOWELS = 'aeiouAO';
const SOUNDS = 'aeiouAObcdfghjklmnpqrstvwxyzCSTN';
/** Sounds that are taken for each other most easily. */
const NEAR = ['pb', 'td', 'kg', 'fv', 'fT', 'sz', 'sS', 'sT', 'SC', 'Cj', 'mn', 'nN', 'lr', 'wl', 'wr', 'jd', 'Tt', 'vb', 'pt', 'kt', 'hf'];
const isVowel = (sound: string): boolean => VOWELS.includes(sound);

function swapCost(a: string, b: string): number {
  if (a === b) return 0;
  if (isVowel(a) && isVowel(b)) return 0.35;
  if (NEAR.includes(a + b) || NEAR.includes(b + a)) return 0.5;
  return isVowel(a) === isVowel(b) ? 1 : 1.2;
}

/** The costs as one table, because every word of the lexicon is compared with every stretch that was heard. */
const SIZE = SOUNDS.length;
const SWAP = Float64Array.from({ length: SIZE * SIZE }, (_, i) => swapCost(SOUNDS.charAt(Math.floor(i / SIZE)), SOUNDS.charAt(i % SIZE)));
const DROP = Float64Array.from(SOUNDS, (sound) => (isVowel(sound) || 'hr'.includes(sound) ? 0.5 : 0.8));

const LEAST_DROP = Math.min(...DROP);
/** Two rows of the table of edits, for all words: each is written before it is read. */
let rows = [new Float64Array(64), new Float64Array(64)] as const;

/** A sound as numbers, for `distance`. */
export const soundCodes = (sound: string): Uint8Array => Uint8Array.from(sound, (one) => Math.max(0, SOUNDS.indexOf(one)));

/**
 * How far two sounds are from each other, 0 to about 1: edits by how easily they are misheard, for each sound of the longer one.
 * @param most further away than this is of no use: the rest is not worked out, and the answer is Infinity
 */
export function distance(a: Uint8Array, b: Uint8Array, most = Infinity): number {
  const longest = Math.max(a.length, b.length);
  if (longest === 0) return 0;
  if (Math.abs(a.length - b.length) * LEAST_DROP > most * longest) return Infinity;
  if (b.length >= rows[0].length) rows = [new Float64Array(2 * b.length), new Float64Array(2 * b.length)];
  let [before, now] = rows;
  before[0] = 0;
  for (let j = 0; j < b.length; j += 1) before[j + 1] = (before[j] as number) + (DROP[b[j] as number] as number);
  for (let i = 0; i < a.length; i += 1) {
    const from = a[i] as number,
      lost = DROP[from] as number,
      row = from * SIZE;
    let least = (now[0] = (before[0] as number) + lost);
    for (let j = 0; j < b.length; j += 1) {
      const to = b[j] as number;
      const cost = Math.min(
        (before[j] as number) + (SWAP[row + to] as number),
        (before[j + 1] as number) + lost,
        (now[j] as number) + (DROP[to] as number),
      );
      now[j + 1] = cost;
      if (cost < least) least = cost;
    }
    if (least / longest > most) return Infinity;
    [before, now] = [now, before];
  }
  return (before[b.length] as number) / longest;
}
