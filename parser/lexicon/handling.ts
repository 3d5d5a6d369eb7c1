/** Verbs of handling, and what they do to the thing that is handled: the same "took it off" is a cap, a hook or tartar. */
import type { ConditionId } from './conditions.ts';
import type { ProcedureId } from './procedures.ts';
import type { WorkState } from './work.ts';

export type Handled = 'cap' | 'overgrowth' | 'points' | 'tartar' | 'feed' | 'tooth' | 'foreign-body';

/** What a finding is when it is taken hold of. A piece of a tooth is none of these: taking it away is not taking the tooth out. */
export const handledAs: Readonly<Partial<Record<ConditionId, Handled>>> = {
  'retained-cap': 'cap', 'loose-cap': 'cap', hook: 'overgrowth', ramp: 'overgrowth', step: 'overgrowth', wave: 'overgrowth', 'focal-overgrowth': 'overgrowth', overlong: 'overgrowth', 'exaggerated-transverse-ridges': 'overgrowth',
  'sharp-enamel-points': 'points', calculus: 'tartar', 'food-packing': 'feed', diastema: 'feed', 'periodontal-pocket': 'feed', 'foreign-body': 'foreign-body',
  'wolf-tooth': 'tooth', 'blind-wolf-tooth': 'tooth', mobility: 'tooth', 'deciduous-present': 'tooth', supernumerary: 'tooth', fracture: 'tooth', 'root-remnant': 'tooth', 'apical-infection': 'tooth', displaced: 'tooth', expired: 'tooth', eotrh: 'tooth',
};
/** What stands proud of a tooth, and is taken down. */
export const overgrowths: ReadonlySet<string> = new Set(Object.entries(handledAs).flatMap(([id, kind]) => (kind === 'overgrowth' || kind === 'points' ? [id] : [])));
/** The work that a finding takes when no more is said than that it is to be done; of a tooth only a wolf tooth says so. */
const plainly: Readonly<Partial<Record<Handled, ProcedureId>>> = { cap: 'remove-cap', overgrowth: 'reduce', points: 'rasp', tartar: 'scale-calculus', feed: 'flush' };
export const procedureOf = (condition: ConditionId): ProcedureId | undefined =>
  condition === 'wolf-tooth' || condition === 'blind-wolf-tooth' ? 'extract' : plainly[handledAs[condition] ?? 'tooth'];
/** What it is called when work is done to it, in the singular. */
export const thingsSay: Readonly<Record<string, readonly ConditionId[]>> = {
  hook: ['hook'], ramp: ['ramp'], step: ['step'], ridge: ['exaggerated-transverse-ridges'], wave: ['wave'], overgrowth: ['hook', 'ramp', 'step', 'focal-overgrowth', 'overlong'], cap: ['loose-cap', 'retained-cap'],
  calculu: ['calculus'], tartar: ['calculus'], gap: ['diastema'], space: ['diastema'], diastema: ['diastema'], diastemata: ['diastema'], pocket: ['periodontal-pocket'],
};
/** What was found, as work names it when it comes back to it: "the hook's reduced", "caps are off". */
export const foundAs: ReadonlyMap<string, readonly ConditionId[]> = new Map(
  Object.entries(thingsSay).flatMap(([word, ids]) => [word, `${word}s`].map((said) => [said, ids] as const)),
);
/** Beside the verbs of work: words by which a phrase tells what became of a thing. */
export const workTells: readonly string[] = ['left', 'leave', 'leaving', 'down', 'level', 'off', 'out', 'took', 'taken', 'next', 'stages', 'alone', 'done', 'sorted', 'waits', 'wait'];
/** By the particle: where the thing went. */
export const handling: Readonly<Record<Handled, Readonly<Partial<Record<string, ProcedureId>>>>> = {
  cap: { off: 'remove-cap', out: 'remove-cap', away: 'remove-cap', free: 'remove-cap' },
  overgrowth: { off: 'reduce', down: 'reduce', back: 'reduce', by: 'reduce', level: 'reduce', away: 'reduce' },
  points: { off: 'rasp', down: 'rasp', back: 'rasp', away: 'rasp' },
  tartar: { off: 'scale-calculus', away: 'scale-calculus' },
  feed: { out: 'flush', away: 'flush' },
  tooth: { out: 'extract', free: 'extract', level: 'reduce' },
  'foreign-body': { out: 'remove-foreign-body', off: 'remove-foreign-body', away: 'remove-foreign-body' },
};
/** Without a particle: "couldn't shift the cap", "tried to pull it". */
export const moved: Readonly<Partial<Record<Handled, ProcedureId>>> = { cap: 'remove-cap', tooth: 'extract', tartar: 'scale-calculus', 'foreign-body': 'remove-foreign-body' };

/** Verbs of having done it. */
export const handledSay: ReadonlySet<string> = new Set(['took', 'taken', 'got', 'cleaned', 'cleared', 'pulled', 'popped', 'lifted', 'flicked', 'whipped', 'prised', 'prized', 'eased', 'twisted', 'knocked', 'chipped', 'picked', 'had', 'dropped', 'brought', 'cut', 'wiggled', 'worked', 'cracked', 'scraped', 'ground', 'shaved', 'slipped', 'levered', 'teased', 'drew', 'hooked', 'dug', 'raked', 'scooped', 'fished']);
/** The verb behind "tried to", "could not", "managed to". */
export const handleSay: ReadonlySet<string> = new Set(['take', 'get', 'pull', 'pop', 'lift', 'flick', 'prise', 'prize', 'ease', 'twist', 'knock', 'chip', 'pick', 'have', 'bring', 'cut', 'wiggle', 'work', 'lever', 'tease', 'draw', 'want', 'having', 'shift', 'move', 'budge', 'loosen', 'remove', 'extract', 'elevate', 'getting', 'pulling', 'taking', 'shifting', 'lifting', 'extracting', 'removing', 'elevating']);
/** Before what is taken down. */
export const loweredSay: readonly string[] = ['took', 'taken', 'take', 'taking', 'brought', 'bring', 'bringing', 'got', 'get', 'dropped', 'ground', 'filed', 'rasped', 'knocked'];
/** Those that need no particle. */
export const movingSay: ReadonlySet<string> = new Set(['pull', 'drew', 'shift', 'move', 'budge', 'loosen', 'remove', 'extract', 'elevate', 'pulling', 'shifting', 'extracting', 'removing', 'elevating']);
/** What is left of a tooth, and is not the tooth. */
export const piecesSay: ReadonlySet<string> = new Set(['piece', 'pieces', 'bit', 'bits', 'fragment', 'fragments', 'sliver', 'slivers', 'splinter', 'splinters', 'shard', 'shards', 'slab', 'chip', 'chips', 'part', 'tip', 'half', 'side']);
/** Before the verb: how the work stands. */
const stands: Readonly<Partial<Record<WorkState, readonly string[]>>> = {
  advised: ['advise', 'would advise', 'advised to', 'advised the owner to', 'recommended to', 'recommend to', 'recommended we', 'suggested we', 'suggest we', 'recommended', 'recommend', 'suggested', 'suggest', 'advised', 'discussed', 'best to', 'better to', 'ought to', 'should'],
  planned: ['coming to', 'coming back to', 'coming out to', 'coming in to', 'come back to', 'fixing to', 'about to', 'looking to', 'aiming to', 'plan to', 'planning to', 'plan is to', 'going to', 'hoping to', 'hope to', 'intend to', 'want to', 'wants to', 'booked in to', 'booked to', 'arranged to', 'will', 'due to', "'ll", 'shall'],
  declined: [...['owner', 'groom', 'rider', 'trainer', 'client', 'she', 'he', 'they'].flatMap((who) => ['', ' has', ' have', ' is'].flatMap((has) => ['declined to', 'declined', 'refused to', 'said no to', 'decided against', 'opted against'].map((no) => `${who}${has} ${no}`))), 'owner did not', 'owner does not', 'owner would not', 'owner will not', 'owner would rather not'],
  'not-done': ['not keen to', 'not happy to', 'not inclined to', 'reluctant to', 'did not', 'does not', 'do not', 'decided not to', 'chose not to', 'not going to', 'opted not to', 'have not', 'would rather not', 'never'],
  attempted: ['tried to', 'tried', 'trying to', 'attempted to', 'attempted', 'failed to', 'failed at', 'struggled to', 'struggling to', 'unable to', 'not able to', 'could not', 'can not', 'cannot', 'did not manage to', 'not manage to', 'did not succeed in', 'no luck', 'no joy', 'no success', 'without success', 'had a go at', 'had a try at', 'had a go'],
};
/** Longest first: "not going to" before "going to". */
export const standsSay: readonly (readonly [words: readonly string[], state: WorkState])[] = (Object.entries(stands) as [WorkState, readonly string[]][])
  .flatMap(([state, forms]) => forms.map((form) => [form.split(' '), state] as const)).sort(([a], [b]) => b.length - a.length);
export const managedSay: readonly string[] = ['managed to', 'able to', 'did manage to', 'finally', 'eventually'];
