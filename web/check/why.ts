/** How sure and why, in words. Pure. */
import type { Evidence, How } from '../../parser/contract/item.ts';
import { plain } from '../labels.ts';

/** `sure`: the share of the hearing's weight that yields the item, 0 to 1. Records of before may lack it where one reading alone was heard. */
export function sureWords({ sure, at, repaired = false }: Pick<Evidence, 'sure' | 'at' | 'repaired'>): string {
  const mended = repaired ? ' A word was read as the one it sounds like.' : '';
  if (sure === undefined) return `${at ? 'Heard in one way only.' : 'Not heard: typed.'}${mended}`;
  const share = Math.min(99, Math.round(sure * 100));
  const words = sure >= 0.9 ? 'Heard clearly' : sure >= 0.7 ? 'Heard fairly clearly' : 'Not heard clearly';
  return `${words} (${sure > 0.995 ? 'over 99' : share} %).${mended}`;
}
/** What the second reader made of it. */
export const secondWords = ({ heard, sure }: { readonly heard: 'same' | 'not-this'; readonly sure?: number | undefined }): string =>
  heard === 'not-this'
    ? 'Did not hear this'
    : `Heard the same${sure === undefined ? '' : sure > 0.995 ? ' (together over 99 %)' : ` (together ${Math.round(sure * 100)} %)`}`;
const fields: Readonly<Record<string, string>> = {
  place: 'the place',
  condition: 'the finding',
  presence: 'found or not',
  measures: 'the measure',
  grade: 'the grade',
  severity: 'how much',
  surfaces: 'the surface',
  qualifiers: 'more exactly',
  procedure: 'the work',
  state: 'done or not',
  instrument: 'the tool',
  amountMm: 'the amount',
  when: 'the time',
};
/** "The place carried from the phrase before; the grade typed." */
export function howWords(how: Readonly<Record<string, How>>): string {
  const told = (way: How, words: string): string | undefined => {
    const names = Object.entries(how)
      .filter(([, h]) => h === way)
      .map(([name]) => fields[name] ?? plain(name));
    return names.length ? `${names.join(', ')} ${words}` : undefined;
  };
  return [told('carried', 'carried over from the phrase before'), told('typed', 'typed by hand')].filter(Boolean).join('; ');
}
/** A rule's name in words; tests/web/why.test.ts reads the grammar and names a rule that has none here. A draft of an older grammar may hold one: it is shown as it is written. */
export const ruleWords = (rule: string): string => rulesInWords[rule] ?? plain(rule);
export const rulesInWords: Readonly<Record<string, string>> = {
  place: 'a place was named',
  condition: 'a finding was named',
  finding: 'a finding and its place were named',
  absent: 'it was ruled out, or said to be sound',
  work: 'work and how it stands were named',
  'same again': '“same” took over what was said before',
  'same work': '“same” took over the work that was said before',
  'declined there': 'what was found there says which work was declined',
  'next of them': 'the list went on: the same finding at the next place',
  amend: 'it corrects or adds to the item before',
  completed: 'it completes what was half said',
  correction: 'it was corrected in the same breath',
  half: 'only half was said',
  'work between or behind two findings': 'the work may be the one finding’s, or the other’s, or both',
  'work without a verb of doing': 'work was named without saying whether it was done',
  'would have': '“would have” does not say that it was done',
  'work of the past': 'it was done at an earlier time',
  unfinished: 'it was left undone or unfinished',
  'a piece of a tooth': 'a piece was taken away, not the tooth',
  'done to what was named': 'it was done to the teeth just named',
  'carried place': 'its place was carried over from the phrase before',
  'normal by its name': 'what was named is what is normal',
  'less those named': 'those named beside it are left out',
  'a quarter behind front teeth': 'the quarter was named behind front teeth: it may be one of those, or its cheek teeth',
  except: 'it was named as the exception',
  'one of those named': 'it is one of the teeth just named',
  'side of the part named': 'a side said alone is that side of the part named just before it',
  'as it was': 'how it was before was said beside how it is now',
  'still there': 'it was said to be there still',
  filled: 'a filling was named, so the work is packing',
  'hollow teeth': 'of teeth, hollow is cupped out',
  'a gum that has grown': 'an overgrown gum is no long tooth',
  'split of what is soft': 'a split of what is soft is a laceration',
  'what comes from an opening': 'what comes down a nostril is discharge, no tooth',
  'after the work': 'it was said after the work',
  'left alone': 'it was left as it was',
  'packed beside a gap': '“packed” beside a gap is feed',
  'overhang of the incisors': 'an overhang of the incisors is an overjet',
  'swelling of a node': 'a swollen node is an enlarged one',
  'how it runs': 'how it smells or looks is said of the discharge',
  'movement of the jaw': 'an excursion is of the jaw, whatever part was named before it',
  'gum of the tooth named': 'one gum, said behind a tooth or a gap, is the gum there',
  'the long side': 'which side is long was named with it',
  'sharp cheek teeth': 'sharp cheek teeth have sharp enamel points',
  'said twice': 'what was said twice is one item',
  'no such tooth there': 'there is no such tooth at that place',
  'from before': 'it was said to be from before',
  'no more': 'it was said to be there no more',
  'as it is now': 'it was said how it is now',
  'a loose cap': 'a loose deciduous tooth is a loose cap',
  'sedation to come': 'sedation was named as still to come',
  'sound-alike': 'a word was read as the one of the trade that it sounds like',
  'two readings': 'it can be read in more than one way',
  'one breath, two readings': 'said in one breath it can be parted in more than one way',
  'a place behind a bare no': 'a “no” before another place may rule out there or take back',
  'a question': 'it was asked, and not answered',
  'said as unsure': 'whether it is so was said to be unsure',
  'said by another': 'somebody else said so',
  'said of the same place': 'it is said of the place of what it is instead',
  'of the tooth just named': 'it is said of the tooth named right before it',
  'shown and not said': 'where “that” was is not known',
  'a bare not': 'a “not” on its own may rule out, or be “noted” or “nought”',
  'mobility or molar': '“M” is said of mobility and of molars',
  'bare not seen': '“not seen” stood alone',
  'hardly seen': 'it was seen in part, or put off',
  'dose as spoken': 'the dose is kept as it was spoken',
  'not given': 'its own words say that it was not given today',
  fact: 'it is about the visit',
  'not examined': 'it was said to be not examined',
  note: 'the word “note” keeps what follows as it is',
  sedation: 'sedation was named',
  'advice to the owner': 'something the owner is asked to do was said',
  'one of several things': 'several things to do later were named',
  'what comes next': 'something to do later was named',
  'put off': 'it was put off to the next visit',
};
