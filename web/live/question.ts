/** A doubt as a question, with the answers that can be touched or spoken. Pure. */
import type { Doubt } from '../../parser/contract/doubt.ts';
import type { Act } from '../../parser/contract/wire.ts';
import { conditionLabel, doubtQuestions } from '../labels.ts';
import { placeWords } from '../mouth/names.ts';
import { aloud } from './say.ts';

export interface Answer {
  readonly label: string;
  readonly act: Act;
}
/** `about`: the half that was understood, or the words in question. */
export interface Question {
  readonly about: string;
  readonly ask: string;
  readonly why: string | null;
  readonly answers: readonly Answer[];
  readonly offered: boolean;
}

const aboutOf = (doubt: Doubt): string => {
  if (doubt.doubt === 'no-place' && doubt.condition) return conditionLabel(doubt.condition);
  if (doubt.doubt === 'no-condition' && doubt.place) return placeWords(doubt.place);
  return doubt.words ? `“${doubt.words}”` : '';
};

/** As many readings as are offered, each by its number word too. */
export const ordinals = ['first', 'second', 'third', 'fourth'] as const;

/** What to ask. Readings are offered as they stand; without any, it stays as said, or goes. */
export const questionOf = (doubt: Doubt): Question => {
  const readings = (doubt.readings ?? [])
    .slice(0, ordinals.length)
    .map(({ label }, reading): Answer => ({ label, act: { act: 'settle', doubt: doubt.id, how: 'reading', reading } }));
  const offered = readings.length > 1;
  const plain: readonly Answer[] = [
    { label: 'Keep as said', act: { act: 'settle', doubt: doubt.id, how: 'kept-as-said' } },
    { label: 'Strike it', act: { act: 'settle', doubt: doubt.id, how: 'struck' } },
  ];
  return { about: aboutOf(doubt), ask: doubtQuestions[doubt.doubt], why: doubt.why ?? null, answers: offered ? readings : plain, offered };
};

/** "309, or 209?" as "Three oh nine, or two oh nine?"; without readings the question itself. */
export const questionAloud = (doubt: Doubt): string => {
  const { about, ask, answers, offered } = questionOf(doubt);
  return aloud(offered ? `${answers.map((a) => a.label).join(', or ')}?` : `${about.replace(/[“”]/g, '')}. ${ask}`);
};
