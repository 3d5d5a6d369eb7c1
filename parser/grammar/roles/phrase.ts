/** What the rules about the roles of marks look at, and what they answer. */
import type { ConditionId } from '../../lexicon/conditions.ts';
import type { WorkTerm } from '../../lexicon/work.ts';
import { first } from '../lists.ts';
import { isFilling, type Mark } from '../scan.ts';
import type { Token } from '../tokens.ts';
import type { Term } from '../vocabulary.ts';

export interface Head {
  readonly mark: number;
  readonly condition?: {
    readonly id: ConditionId;
    readonly strength: 'say' | 'withPlace' | 'absentSay';
    readonly plural: boolean;
    readonly grade?: string;
  };
  readonly work?: Procedure;
}
export type Role = 'head' | 'place' | 'cue' | 'mod' | 'stop' | 'glue' | 'unknown';
type Procedure = Extract<WorkTerm, { as: 'procedure' }>;

/** What a phrase holds as a whole. */
export interface Phrase {
  readonly marks: readonly Mark[];
  readonly tokens: readonly Token[];
  readonly anyPlace: boolean;
  readonly fractureSaid: boolean;
  readonly ruledOut: boolean;
  readonly notOnly: boolean;
  /** Something was done, or is to be. */
  readonly seated: boolean;
  readonly outcome: boolean;
  /** A tooth was taken out. */
  readonly drawn: boolean;
  readonly filled: boolean;
}

/** One mark of it, and what its words can name. */
export interface Here extends Phrase {
  readonly i: number;
  readonly mark: Mark;
  readonly terms: readonly Term[];
  readonly condition: Extract<Term, { k: 'condition' }> | undefined;
  readonly work: Procedure | undefined;
  readonly qualifier: Extract<Term, { k: 'qualifier' }> | undefined;
  /** The names before it. */
  readonly heads: readonly Head[];
}

/** A role, or what the mark names; nothing where the rule has no opinion. */
export type Rule = (here: Here) => Exclude<Role, 'head'> | Omit<Head, 'mark'> | undefined;

export function phraseOf(marks: readonly Mark[], tokens: readonly Token[], hasPlaceBefore: boolean): Phrase {
  const said = (is: (term: Term) => boolean): boolean => marks.some(({ terms }) => terms?.some(is));
  return {
    marks,
    tokens,
    anyPlace: hasPlaceBefore || marks.some(({ place }) => place !== undefined),
    fractureSaid: said((t) => t.k === 'condition' && t.strength === 'say' && t.id === 'fracture'),
    ruledOut: said((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind !== 'pseudo'),
    notOnly: said((t) => t.k === 'cue' && t.cue.kind === 'pseudo' && t.cue.say.includes('not only')),
    seated: tokens.some(({ t }) => t === 'done') || said((t) => t.k === 'work' && t.term.as === 'state' && t.term.state !== 'done'),
    outcome: said((t) => t.k === 'work' && t.term.as === 'outcome'),
    drawn: said((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.id === 'extract' && t.term.done === true),
    filled: marks.some(isFilling),
  };
}

export function hereOf(phrase: Phrase, i: number, heads: readonly Head[]): Here {
  const mark = phrase.marks[i] as Mark;
  const terms = mark.terms ?? [];
  return {
    // Field by field: a spread costs a tenth of the reading.
    marks: phrase.marks,
    tokens: phrase.tokens,
    anyPlace: phrase.anyPlace,
    fractureSaid: phrase.fractureSaid,
    ruledOut: phrase.ruledOut,
    notOnly: phrase.notOnly,
    seated: phrase.seated,
    outcome: phrase.outcome,
    drawn: phrase.drawn,
    filled: phrase.filled,
    i,
    mark,
    terms,
    heads,
    condition: terms.find(
      (t): t is Extract<Term, { k: 'condition' }> =>
        t.k === 'condition' && (t.strength !== 'withPlace' || phrase.anyPlace || phrase.ruledOut),
    ),
    work: first(terms, (t) => (t.k === 'work' && t.term.as === 'procedure' ? t.term : undefined)),
    qualifier: terms.find((t): t is Extract<Term, { k: 'qualifier' }> => t.k === 'qualifier'),
  };
}

export const isHead = (term: Term): boolean => term.k === 'condition' || (term.k === 'work' && term.term.as === 'procedure');
export const isHeadMark = (mark: Mark): boolean => mark.terms?.some(isHead) ?? false;
export const workDone = ({ terms }: Mark): boolean =>
  terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done) ?? false;
