/** Sentences in which a stretch of what was heard is a name that may be expected and sounds like it: proposals for the ear to judge. */
import { distance, soundCodes, soundOf } from './sounds.ts';

/** Further away than this in sound no name is proposed. */
const NEAR_ENOUGH = 0.35;
/** A name may have been heard as two words more than it has. */
const MORE = 2;

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9' ]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/**
 * @param heard texts as they were heard, the likeliest first
 * @param names as they are written ("Bonny Lass"); their order does not count
 * @returns at most `count` sentences with the name as it is written, the nearest in sound first, none of them a heard text itself
 */
export function withNames(heard: readonly string[], names: readonly string[], count: number): readonly string[] {
  const known = [...new Set(names)]
    .filter((name) => plain(name) !== '')
    .map((name) => ({ name, length: name.split(' ').length, sound: soundCodes(soundOf(name)) }));
  const given = new Set(heard.map(plain));
  const sentences = new Map<string, number>();
  for (const text of given) {
    const words = text.split(' ');
    for (let from = 0; from < words.length; from += 1) {
      let stretch = '';
      for (let to = from + 1; to <= words.length; to += 1) {
        stretch = `${stretch} ${words[to - 1] as string}`;
        const sound = soundCodes(soundOf(stretch));
        for (const { name, length, sound: own } of known) {
          if (to - from > length + MORE) continue;
          const far = distance(sound, own);
          const sentence = [...words.slice(0, from), name, ...words.slice(to)].join(' ');
          if (far <= NEAR_ENOUGH && !given.has(plain(sentence)))
            sentences.set(sentence, Math.min(far, sentences.get(sentence) ?? Infinity));
        }
      }
    }
  }
  return [...sentences]
    .sort(([a, x], [b, y]) => x - y || (a < b ? -1 : 1))
    .slice(0, count)
    .map(([sentence]) => sentence);
}
