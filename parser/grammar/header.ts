/** Facts of the horse spoken in passing: "nine year old gelding", "rising four". */
import type { Horse } from '../contract/draft.ts';
import { readNumber } from './numbers.ts';
import type { Reading } from './read.ts';

const sexes: Readonly<Record<string, NonNullable<Horse['sex']>>> = { mare: 'mare', gelding: 'gelding', stallion: 'stallion', colt: 'colt', filly: 'filly' };

/** The horse's age and sex, and which words said so; undefined when neither was spoken as such. */
export function headerIn({ tokens, made }: Reading): { readonly header: { horse: Horse }; readonly words: readonly number[] } | undefined {
  const horse: Horse = {};
  const words: number[] = [];
  tokens.forEach((token, at) => {
    const rising = tokens[at - 1]?.t === 'rising';
    const number = readNumber(tokens, at);
    const unit = number && tokens[number.to]?.t;
    const old = number && ['old', ...Object.keys(sexes)].includes(tokens[number.to + 1]?.t ?? '');
    if (horse.age === undefined && number && Number.isFinite(number.value) && ((/^(year|years|month|months)$/.test(unit ?? '') && old) || rising)) {
      const about = ['about', 'around', 'roughly'].includes(tokens[at - 1]?.t ?? '');
      horse.age = { value: number.value, unit: /^month/.test(unit ?? '') ? 'month' : 'year', ...(rising ? { rising } : {}), ...(about ? { about } : {}) };
      const to = unit && /^(year|month)/.test(unit) ? number.to + (tokens[number.to + 1]?.t === 'old' ? 2 : 1) : number.to;
      for (let i = rising || about ? at - 1 : at; i < to; i += 1) words.push((tokens[i] as { word: number }).word);
    }
    const sex = sexes[token.t];
    if (sex && horse.sex === undefined && (horse.age !== undefined || tokens.length <= 3)) { horse.sex = sex; words.push(token.word); }
  });
  return words.length === 0 || (made.length > 0 && horse.age === undefined) ? undefined : { header: { horse }, words };
}
