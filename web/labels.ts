/** Ids of the lexicon as a person reads them. The only file of the page that reads the lexicon's tables of labels. */
import { commands } from '../parser/lexicon/commands.ts';
import { conditions } from '../parser/lexicon/conditions.ts';
import { procedures } from '../parser/lexicon/procedures.ts';
import { regions } from '../parser/lexicon/regions.ts';
import { scales } from '../parser/lexicon/scales.ts';
import { labelOf } from '../parser/labels.ts';
import type { ConditionEntry } from '../parser/lexicon/types.ts';
import type { DoubtKind } from '../parser/contract/doubt.ts';
import type { Finding, ItemKind, Treatment } from '../parser/contract/item.ts';

export { commands, conditions, procedures, regions, scales };
export type ConditionId = keyof typeof conditions;

export const condition = (id: string): ConditionEntry => (conditions as Record<string, ConditionEntry>)[id]!;
export const conditionLabel = labelOf;
export const procedureLabel = labelOf;
export const scaleLabel = (id: string): string => (scales as Record<string, { label: string }>)[id]?.label ?? '';

/** An id without a label of its own, as words: "part-done" to "part done". */
export const plain = (id: string): string => id.replaceAll('-', ' ');
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
export const small = (words: string): string => (/^[A-Z]{2}/.test(words) ? words : words.charAt(0).toLowerCase() + words.slice(1));

/** Groups of conditions as headings of the list to choose from, in the order of an exam. */
export const conditionGroups: Readonly<Record<ConditionEntry['group'], string>> = {
  normal: 'Normal',
  wear: 'Wear and shape',
  gums: 'Gums and gaps',
  tooth: 'The tooth itself',
  number: 'Number, eruption, position',
  bite: 'Incisor bite',
  soft: 'Soft tissue and head',
  horse: 'The whole horse',
};
export const presenceLabels: Readonly<Record<Finding['presence'], string>> = {
  present: 'Found',
  absent: 'Ruled out',
  suspected: 'Suspected',
};
export const whenLabels: Readonly<Record<Finding['when'], string>> = {
  now: 'Now',
  before: 'From before',
  'after-treatment': 'After the work',
};
export const stateLabels: Readonly<Record<Treatment['state'], string>> = {
  done: 'Done',
  planned: 'Planned',
  advised: 'Advised',
  declined: 'Declined',
  'not-done': 'Not done',
  attempted: 'Attempted',
  'part-done': 'Partly done',
};
export const kindLabels: Readonly<Record<ItemKind, string>> = {
  finding: 'Finding',
  treatment: 'Work',
  sedation: 'Sedation',
  medication: 'Medicine',
  'follow-up': 'What comes next',
  'not-examined': 'Not examined',
  fact: 'About the visit',
  note: 'Note',
};
export const actionLabels = {
  recheck: 'See again',
  'refer-to-veterinarian': 'Refer to the veterinarian',
  monitor: 'Keep an eye on',
  'advise-owner': 'Advice to the owner',
  'send-report': 'Send a report',
  'rest-from-bit': 'Rest from the bit',
} as const;
export const routeLabels = { iv: 'into the vein', im: 'into the muscle', oral: 'by mouth', sublingual: 'under the tongue' } as const;

/** A doubt as the question it asks. */
export const doubtQuestions: Readonly<Record<DoubtKind, string>> = {
  'no-such-tooth': 'There is no such tooth. Which one?',
  'off-scale': 'That grade is not on the scale.',
  'two-readings': 'Which of these was said?',
  'no-place': 'Not sure: which tooth?',
  'no-condition': 'Not sure: what was found there?',
  unread: 'These words could not be read.',
  unheard: 'Someone spoke, but no words were found.',
  unlikely: 'Unusual. Is it right?',
  unsure: 'Not heard clearly. Is it right?',
  'readers-differ': 'Two hearings differ. Which one?',
  irreversible: 'Extracted: is that right?',
  'state-unclear': 'Was it done, or is it still to do?',
  'dose-unclear': 'The dose is not clear.',
  conflict: 'This does not go with something said before.',
};
