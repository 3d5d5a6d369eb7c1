/** Sentences of the trade's words that sound like what was heard: proposals for the ear to judge, never readings by themselves. */
import { memory } from './memory.ts';
import { distance, soundCodes, soundOf } from './sounds.ts';

/** Further away than this in sound, a word is not proposed; in place of a word that is the trade's own, it has to be nearer. */
const NEAR_ENOUGH = 0.45,
  NEAR_TO_KNOWN = 0.3;
/** What it costs to keep a heard word that no form holds. */
const STRANGER = 0.45;
const LONGEST_STRETCH = 3;
const ALIKE = 5;
/** Stretches whose comparison with the whole vocabulary is kept. */
const REMEMBERED = 5000;

type Known = { readonly word: string; readonly sound: Uint8Array };
type Alike = readonly [word: string, far: number];
type Path = { readonly text: string; readonly cost: number };

/**
 * @param forms spoken forms, whose words are the trade's ("valve diastema", "three oh nine")
 * @returns a function from heard texts to at most `count` sentences, likeliest first, none of them a heard text itself
 */
export function proposer(forms: readonly string[]): (heard: readonly string[], count: number) => readonly string[] {
  const vocabulary = new Set(forms.flatMap((form) => plain(form).split(' ')).filter((word) => word !== ''));
  const known: readonly Known[] = [...vocabulary].map((word) => ({ word, sound: soundCodes(soundOf(word)) }));
  const remembered = memory<readonly Alike[]>(REMEMBERED);
  const alike = (stretch: string): readonly Alike[] =>
    remembered(stretch, () => soundAlikes(stretch, known, vocabulary.has(stretch) ? NEAR_TO_KNOWN : NEAR_ENOUGH));

  return (heard, count) => {
    const given = new Set(heard.map(plain));
    const sentences = new Map<string, number>();
    for (const text of given) {
      for (const { text: sentence, cost } of cheapest(text.split(' '), alike, vocabulary, count + 1)) {
        if (!given.has(sentence)) sentences.set(sentence, Math.min(cost, sentences.get(sentence) ?? Infinity));
      }
    }
    return [...sentences]
      .sort(([, a], [, b]) => a - b)
      .slice(0, count)
      .map(([sentence]) => sentence);
  };
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9' ]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

function soundAlikes(stretch: string, known: readonly Known[], nearEnough: number): readonly Alike[] {
  const sound = soundCodes(soundOf(stretch));
  return known
    .filter(
      ({ word, sound: own }) =>
        word !== stretch && Math.abs(own.length - sound.length) <= nearEnough * 2 * Math.max(own.length, sound.length),
    )
    .map(({ word, sound: own }) => [word, distance(sound, own, nearEnough)] as const)
    .filter(([, far]) => far <= nearEnough)
    .sort(([, a], [, b]) => a - b)
    .slice(0, ALIKE);
}

/** The cheapest ways through a sentence, each stretch of words kept or changed for a form that sounds like it. */
function cheapest(
  words: readonly string[],
  alike: (stretch: string) => readonly Alike[],
  vocabulary: ReadonlySet<string>,
  count: number,
): readonly Path[] {
  const upTo: Path[][] = [[{ text: '', cost: 0 }]];
  for (let end = 1; end <= words.length; end += 1) {
    const last = words[end - 1] as string;
    const paths = (upTo[end - 1] as Path[]).map((path) => ({
      text: longer(path.text, last),
      cost: path.cost + (vocabulary.has(last) ? 0 : STRANGER),
    }));
    for (let length = 1; length <= Math.min(LONGEST_STRETCH, end); length += 1) {
      const stretch = words.slice(end - length, end);
      for (const [word, far] of alike(stretch.join(' '))) {
        // Each changed word costs its distance, and a little for being changed at all.
        const cost = 0.1 + far * length;
        paths.push(...(upTo[end - length] as Path[]).map((path) => ({ text: longer(path.text, word), cost: path.cost + cost })));
      }
    }
    upTo.push(distinct(paths, count));
  }
  return upTo[words.length] as Path[];
}

const longer = (text: string, word: string): string => (text === '' ? word : `${text} ${word}`);

/** The cheapest so many of them, each text once. */
function distinct(paths: readonly Path[], count: number): Path[] {
  const found = new Map<string, Path>();
  for (const path of [...paths].sort((a, b) => a.cost - b.cost)) {
    if (found.size === count) break;
    if (!found.has(path.text)) found.set(path.text, path);
  }
  return [...found.values()];
}
