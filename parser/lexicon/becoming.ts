/** What became of a thing that was found, told by what points back to it: "that popped off", "got most of it off", "those are staying put". */
import type { ConditionId } from './conditions.ts';
import type { Handled } from './handling.ts';
import type { ProcedureId } from './procedures.ts';

/** How the work stands, in one word and as the trade says it plainly; `V` and `Ved` are the verb of the thing's own work, `it` what points back. */
export const plainStates = {
  done: 'Ved it',
  part: 'partly Ved it',
  rest: 'partly Ved it',
  halves: 'partly Ved it and will V it',
  planned: 'will V it',
  left: 'did not V it',
  declined: 'owner declined to V it',
  tried: 'tried to V it',
  byVet: 'vet Ved it',
  forVet: 'vet will V it',
} as const;
export type Became = keyof typeof plainStates;

/** The verb of its work, and that of having done it. */
export const workVerbs: Readonly<Record<Handled, readonly [plain: string, done: string]>> = {
  cap: ['remove', 'removed'], overgrowth: ['reduce', 'reduced'], points: ['rasp', 'rasped'], tartar: ['scale', 'scaled'], feed: ['flush', 'flushed'], tooth: ['extract', 'extracted'], 'foreign-body': ['remove', 'removed'],
};
/** Work that is gone on with by pointing back to it. */
export const wentOn: Readonly<Partial<Record<ProcedureId, Handled>>> = { reduce: 'overgrowth', rasp: 'points', flush: 'feed', 'scale-calculus': 'tartar', 'remove-cap': 'cap' };
/** Of what is found in a tooth only these are the tooth itself: "that's out" of a fracture may be anything. */
export const toothItself: readonly ConditionId[] = ['wolf-tooth', 'blind-wolf-tooth', 'root-remnant'];

/** Words that point back, by what stands for them. */
export const pointsBack = {
  it: ['it', 'that', 'this', 'that one', 'this one', 'all of it', 'all of that', 'all that', 'it all'],
  them: ['them', 'those', 'these', 'they', 'those ones', 'them all', 'all of them', 'all of those', 'the lot of them'],
  both: ['both', 'both of them', 'both of those', 'the both of them', 'the both', 'the two of them', 'the pair of them', 'the pair', 'the two', 'them both', 'those two', 'they both', 'they are both'],
} as const;
/** Those that the plain verbs of handling do not know by themselves. */
export const countedBack: readonly string[] = [...pointsBack.both.filter((said) => !['both', 'them both', 'those two'].includes(said)), 'the lot of them', 'those ones', 'all that', 'it all'];
/** By its own name, in the singular; said of what was found last. */
export const namedAgainAs: Readonly<Partial<Record<Handled, readonly [one: string, several: string]>>> = { tooth: ['wolf tooth', 'wolf teeth'], cap: ['cap', 'caps'] };
/** Whoever may say no to work. */
export const whoSaysNo: readonly string[] = ['the owner', 'owner', 'she', 'he', 'they', 'mum', 'dad', 'the client', 'client', 'the boss', 'boss', 'trainer', 'the trainer', 'the rider', 'the groom'];

/** Behind the verb: where the thing went. Only what a thing of its kind can do is read. */
export const went: Readonly<Record<Handled, readonly string[]>> = {
  cap: ['off', 'out', 'away', 'free'], overgrowth: ['off', 'down', 'back', 'away'], points: ['off', 'down', 'back', 'away'], tartar: ['off', 'away'], feed: ['out', 'away'], tooth: ['out', 'free'], 'foreign-body': ['out', 'off', 'away', 'free'],
};
/** It is so now, and by the work. */
export const standsNow: Readonly<Record<Handled, readonly string[]>> = {
  cap: ['off', 'out', 'away'], overgrowth: ['off', 'down', 'down to level', 'down level', 'level', 'flush', 'taken care of'], points: ['off', 'down', 'taken care of'], tartar: ['off', 'cleaned off', 'cleaned up', 'away'], feed: ['out', 'cleaned out', 'cleared out', 'flushed out'], tooth: ['out'], 'foreign-body': ['out', 'away'],
};
/** It is like that now, told without a verb right behind what was found. */
const levelled = '(?:flat|level|flush|even)(?: (?:to|with) (?:the )?(?:(?:rest|others|other ones)(?: of (?:the|that|his|her) (?:row|arcade))?|row|arcade|next (?:one|tooth)|(?:its )?neighbours?|one behind|one in front|teeth either side|(?:(?:one|two|three|four|oh|zero|five|six|seven|eight|nine|ten|eleven)\\b ?){2,4}))?';
export const likeNow: Readonly<Record<Handled, readonly string[]>> = {
  cap: [], overgrowth: [levelled, 'done', 'sorted'], points: ['done', 'sorted'], tartar: ['done', 'sorted'], feed: [], tooth: [], 'foreign-body': [],
};
/** Verbs of light work on what stands up. */
export const lightly: readonly string[] = ['skimmed', 'kissed', 'dusted', 'touched up', 'tidied up', 'tidied', 'smoothed off', 'smoothed over', 'trimmed up', 'eased off'];
/** Verbs of having taken hold of it, and of its going by itself under the hand. */
export const tookHold: readonly string[] = ['flaked', 'peeled', 'snapped', 'clipped', 'filed', 'washed', 'wiped', 'took', 'taken', 'got', 'cleaned', 'cleared', 'pulled', 'popped', 'lifted', 'flicked', 'whipped', 'prised', 'prized', 'eased', 'twisted', 'knocked', 'chipped', 'picked', 'brought', 'cut', 'wiggled', 'worked', 'cracked', 'scraped', 'ground', 'shaved', 'slipped', 'levered', 'teased', 'hooked', 'dug', 'raked', 'scooped', 'fished'];
export const wentByHand: readonly string[] = ['came', 'popped', 'lifted', 'slid', 'slipped', 'peeled', 'flaked', 'flicked', 'eased', 'taken', 'lifted', 'pulled', 'picked', 'scraped', 'knocked', 'washed', 'cleaned', 'cleared', 'filed', 'whipped', 'prised', 'levered'];
/** Behind what went: it did so without any hand, or at another time. */
export const byItself: readonly string[] = ['by itself', 'by themselves', 'on its own', 'on their own', 'of its own accord', 'in the field', 'last', 'yesterday', 'overnight', 'before', 'a while', 'since', 'in his feed', 'in her feed', 'in the feed', 'of him', 'of her'];
/** Why it was left as it is. */
export const noHarm: readonly string[] = [
  "(?:it is |it's |they are |that is )?(?:not |hardly |never )(?:doing|causing|bothering|hurting|troubling|worrying|giving)(?: \\w+){0,5}", "(?:it is |it's |they are )?(?:doing|causing) (?:no|little) (?:harm|damage|trouble|bother|problem|problems)(?: \\w+){0,3}",
  '(?:it |they )?(?:does|do|will|did) not (?:bother|hurt|trouble|worry|matter|need|want)(?: \\w+){0,4}', '(?:there is )?(?:no|not any) (?:need|point|call for it|harm in it|reason to|sense in it)(?: \\w+){0,4}', '(?:it is |they are )?not (?:worth|needed|necessary|in the way|big enough|bad enough)(?: \\w+){0,4}',
  '(?:he|she) (?:is |can |seems )?(?:eating|chewing|coping|managing|eats|chews|copes|manages|comfortable|happy|cope|manage|eat|chew)(?: \\w+){0,5}', 'it is (?:too )?(?:small|tiny|so small|only small|minor|nothing)(?: \\w+){0,3}',
];
/** How far the work got, and no further. */
export const notAll: readonly string[] = ['the worst', 'most', 'some', 'part', 'a good part', 'a fair bit', 'the most', 'nearly all', 'the bulk', 'the best part', 'what i could', 'as much as i could', 'as much as he would let me', 'as much as she would let me', 'as much as i dared', 'as far as i could'];
export const partOfTheWay: readonly string[] = ['halfway', 'half way', 'half of the way', 'half the way', 'part way', 'partway', 'part of the way', 'some of the way', 'most of the way'];
/** Tools, where the work is told by what was used on the thing. */
export const usedOnIt: readonly string[] = ['burr', 'rasp', 'float', 'file', 'hand rasp', 'hand float', 'hand file', 'power float', 'power rasp', 'motorised float', 'motorised rasp', 'motorised', 'motor', 'power tool', 'forceps', 'elevator', 'disc'];
/** What opens and closes, and the verbs of its opening; behind them, the time that it is compared with. */
export const gapNames: readonly string[] = ['gap', 'gaps', 'space', 'spaces', 'diastema', 'diastemata', 'diastemas', 'valve'];
export const openingBy: readonly string[] = ['opened', 'widened', 'opening', 'widening'];
export const changedSince: readonly string[] = ['since', 'than', 'again'];
