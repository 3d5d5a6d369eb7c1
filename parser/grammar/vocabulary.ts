/** The one trie: every spoken form of the lexicon, with what it may mean. */
import {
  commandClosers,
  commandOpeners,
  commands,
  carryingOn,
  flagging,
  forTheVet,
  strikingBecause,
  type CommandId,
} from '../lexicon/commands.ts';
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import { correctionSay } from '../lexicon/corrections.ts';
import { conversation, glue, hesitations } from '../lexicon/fillers.ts';
import { changeSay, qualifierSay, severityKept, severitySay, surfaceSay } from '../lexicon/modifiers.ts';
import { historyCues } from '../lexicon/history.ts';
import { allRound, askedNames, elsewhere, groupSay, hundredSay, jawSay, rowSay, sideSay } from '../lexicon/places.ts';
import { regions, type RegionId } from '../lexicon/regions.ts';
import { fractureSay, mobilitySay } from '../lexicon/scales.ts';
import { scopeCues, scopeStops, type ScopeCue } from '../lexicon/scopes.ts';
import type { QualifierId, SeverityId, SurfaceId } from '../lexicon/surfaces.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { ofNoHorseHere, otherBeings, otherHorses, talkSay } from '../lexicon/talk.ts';
import { workSay, type WorkTerm } from '../lexicon/work.ts';
import { expand } from './template.ts';
import { buildTrie, type Trie } from './trie.ts';

export type Term =
  | {
      readonly k: 'condition';
      readonly id: ConditionId;
      readonly strength: 'say' | 'withPlace' | 'absentSay';
      readonly plural: boolean;
      /** A class that the words themselves name. */ readonly grade?: string;
    }
  | { readonly k: 'region'; readonly id: RegionId; readonly plural: boolean }
  | { readonly k: 'surface'; readonly id: SurfaceId }
  | { readonly k: 'qualifier'; readonly id: QualifierId }
  | { readonly k: 'severity'; readonly id: SeverityId; readonly said: string }
  | { readonly k: 'severityKept'; readonly said: string }
  | { readonly k: 'change'; readonly id: 'new' | 'better' | 'worse' | 'unchanged' }
  | { readonly k: 'side'; readonly id: 'left' | 'right' | 'both'; readonly weak?: true }
  | { readonly k: 'jaw'; readonly id: 'upper' | 'lower' | 'both'; readonly plural: boolean }
  | { readonly k: 'row'; readonly plural: boolean }
  | { readonly k: 'hundreds'; readonly quadrant: number }
  | { readonly k: 'allRound' }
  | { readonly k: 'elsewhere'; readonly said: string }
  | { readonly k: 'group'; readonly positions: readonly number[]; readonly plural: boolean }
  | { readonly k: 'asked'; readonly positions: readonly [number, number] }
  | { readonly k: 'cue'; readonly cue: ScopeCue }
  | { readonly k: 'stop' }
  | { readonly k: 'work'; readonly term: WorkTerm }
  | { readonly k: 'filler' }
  | { readonly k: 'glue' }
  | {
      readonly k: 'talk';
      /** Someone else is spoken of. */ readonly other?: true;
      /** Another horse. */ readonly horse?: true;
      /** Horses altogether. */ readonly general?: true;
    };

const entries: (readonly [readonly string[], Term])[] = [];
const add = (forms: readonly string[], term: (said: string) => Term): void => {
  for (const form of forms)
    for (const words of expand(form)) {
      if (words.length === 0) continue;
      const said = words.join(' ');
      const written = joined(said);
      entries.push([words, term(said)]);
      if (written !== said) entries.push([written.split(' '), term(said)]);
    }
};
/** "t m js" is said, "tmjs" is written. */
const joined = (said: string): string =>
  said.replace(/\b([a-z])((?: [a-z])+s?)\b(?! [a-z]\b)/g, (_, first: string, more: string) => first + more.replaceAll(' ', ''));
const plural = (said: string): boolean =>
  /s$|teeth$|ies$|(?:back|last|rear) (?:two|three)$|(?:two|three) (?:back|last|rear)$/.test(said) && !/ss$|is$/.test(said);

for (const [id, entry] of Object.entries(conditions) as [ConditionId, ConditionEntry][]) {
  for (const strength of ['say', 'withPlace', 'absentSay'] as const)
    add(entry[strength] ?? [], (said) => ({ k: 'condition', id, strength, plural: plural(said) }));
}
for (const [grade, forms] of Object.entries(mobilitySay))
  add(forms, () => ({ k: 'condition', id: 'mobility', strength: 'withPlace', plural: false, grade }));
for (const [grade, forms] of Object.entries(fractureSay))
  add(forms, (said) => ({ k: 'condition', id: 'fracture', strength: 'say', plural: plural(said), grade }));
for (const [id, entry] of Object.entries(regions) as [RegionId, (typeof regions)[RegionId]][])
  // "corners of the mouth", "nodes under the jaw"
  add(entry.say, (said) => ({ k: 'region', id, plural: plural(said.replace(/ (?:of|under|beneath|below|between|behind) .*$/, '')) }));
for (const [id, forms] of Object.entries(surfaceSay) as [SurfaceId, readonly string[]][]) add(forms, () => ({ k: 'surface', id }));
for (const [id, forms] of Object.entries(qualifierSay) as [QualifierId, readonly string[]][]) add(forms, () => ({ k: 'qualifier', id }));
for (const [id, forms] of Object.entries(severitySay) as [SeverityId, readonly string[]][])
  add(forms, (said) => ({ k: 'severity', id, said }));
add(severityKept, (said) => ({ k: 'severityKept', said }));
for (const [id, forms] of Object.entries(changeSay) as ['new', readonly string[]][]) add(forms, () => ({ k: 'change', id }));
for (const [id, forms] of Object.entries(sideSay) as ['left', readonly string[]][])
  add(forms, (said) => ({ k: 'side', id, ...(said === 'both' || said === 'either' ? { weak: true as const } : {}) }));
for (const [id, forms] of Object.entries(jawSay) as ['upper', readonly string[]][])
  add(forms, (said) => ({ k: 'jaw', id, plural: plural(said) }));
add(rowSay, (said) => ({ k: 'row', plural: plural(said) }));
for (const [form, quadrant] of Object.entries(hundredSay)) add([form], () => ({ k: 'hundreds', quadrant }));
add(allRound, () => ({ k: 'allRound' }));
add(elsewhere, (said) => ({ k: 'elsewhere', said }));
for (const group of groupSay) add(group.say, (said) => ({ k: 'group', positions: group.positions, plural: plural(said) }));
for (const name of askedNames) add(name.say, () => ({ k: 'asked', positions: name.positions }));
for (const cue of [...scopeCues, ...historyCues]) add(cue.say, () => ({ k: 'cue', cue }));
add(scopeStops, () => ({ k: 'stop' }));
for (const { say, ...term } of workSay) add(say, () => ({ k: 'work', term: term as WorkTerm }));
add(hesitations, () => ({ k: 'filler' }));
add(glue, () => ({ k: 'glue' }));
add(conversation, () => ({ k: 'filler' }));
add(correctionSay, () => ({ k: 'glue' }));
add(talkSay, () => ({ k: 'talk' }));
add(otherBeings, () => ({ k: 'talk', other: true }));
add(otherHorses, () => ({ k: 'talk', other: true, horse: true }));
add(ofNoHorseHere, () => ({ k: 'talk', general: true }));

export const vocabulary: Trie<Term> = buildTrie(entries);
/** The same without everyday phrases: where a place stands behind it, "crack on" is a crack and "left in" a side. */
export const withoutTalk: Trie<Term> = buildTrie(entries.filter(([, { k }]) => k !== 'talk'));

const ofPlaces: ReadonlySet<Term['k']> = new Set(['side', 'jaw', 'row', 'hundreds', 'allRound', 'elsewhere', 'group', 'asked', 'region']);
export const isOfPlace = ({ k }: Term): boolean => ofPlaces.has(k);
const workDone = entries.flatMap(([words, term]) => (term.k === 'work' && term.term.as === 'procedure' && term.term.done ? [words] : []));
/** First words of work that was done. */
export const didWords: ReadonlySet<string> = new Set(workDone.flatMap((words) => words.slice(0, 1)));
const things: ReadonlySet<string> = new Set(entries.flatMap(([words, { k }]) => (k === 'condition' && words.length === 1 ? words : [])));
/** Work that was done is said with one of these at least, and they are not what it is done to: of "hook reduced" the second. */
export const workWords: ReadonlySet<string> = new Set(
  workDone.flatMap((words) => words.find((word) => !things.has(word)) ?? words.slice(0, 1)),
);
/** First words of the forms of place. */
export const placeWords: ReadonlySet<string> = new Set(entries.flatMap(([words, term]) => (isOfPlace(term) ? words.slice(0, 1) : [])));

/** Phrases that steer, without what is said around them. */
export const commandForms: readonly (readonly [readonly string[], CommandId])[] = (
  Object.entries(commands) as [CommandId, { readonly say: readonly string[] }][]
).flatMap(([id, { say }]) => say.flatMap((form) => expand(form).map((words) => [words, id] as const)));
export const commandTrie: Trie<CommandId> = buildTrie(commandForms);
const trieOf = (forms: readonly string[]): Trie<true> =>
  buildTrie(forms.flatMap((form) => expand(form).map((words) => [words, true] as const)));
export const openerTrie = trieOf(commandOpeners);
export const closerTrie = trieOf(commandClosers);
export const carryingOnTrie = trieOf(carryingOn);
export const flaggingTrie = trieOf(flagging);
export const forTheVetTrie = trieOf(forTheVet);
export const becauseTrie = trieOf(strikingBecause);

/** Every spoken form of the trade as words, without fillers and small words: the decoder's bias, the help sheet. */
export const tradeForms: readonly string[] = [
  ...new Set(
    entries.filter(([, term]) => !['filler', 'glue', 'stop', 'severityKept', 'talk'].includes(term.k)).map(([words]) => words.join(' ')),
  ),
];

const small = new Set([...glue, ...hesitations]);
const wordsOf = (which: (term: Term) => boolean): readonly string[] => {
  const all = new Set<string>();
  for (const [words, term] of entries) if (which(term)) for (const word of words) if (!small.has(word)) all.add(word);
  return [...all];
};
/** Single words of findings, regions and surfaces: what a misheard word may have been. Work and medicines are never guessed. */
export const soundForms: readonly string[] = wordsOf((term) => ['condition', 'region', 'surface', 'qualifier'].includes(term.k));
export const agentWords: ReadonlySet<string> = new Set(wordsOf((term) => term.k === 'work' && term.term.as === 'agent'));

/** Names this lexicon in a record: changes with any spoken form (FNV-1a over all of them). */
export const lexiconVersion: string = entries
  .reduce((before, [words]) => {
    const said = words.join(' ');
    let hash = before;
    for (let at = 0; at < said.length; at += 1) hash = Math.imul(hash ^ said.charCodeAt(at), 0x01000193) >>> 0;
    return hash;
  }, 0x811c9dc5)
  .toString(16)
  .padStart(8, '0');
