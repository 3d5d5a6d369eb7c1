/** Names that may well be spoken in an exam: its own, those of the same day, and the horses known at its yard. */
import type { Header } from '../../parser/contract/draft.ts';
import type { ExamRow, HorseRow } from '../../parser/contract/wire.ts';
import type { Ear } from './ear.ts';

/** More names than this are no list of a day, and each is one more that another may be taken for. */
const most = 60;

export type Known = {
  readonly exams: readonly Pick<ExamRow, 'horse' | 'owner' | 'yard' | 'startedAt' | 'erased'>[];
  readonly horses: readonly Pick<HorseRow, 'name' | 'owner' | 'yard'>[];
};

/** @returns each name once, as it is written; the exam's own first, then the day's, then the yard's */
export function expectedNames({ horse, owner, yard, examiner, present, startedAt }: Header, { exams, horses }: Known): readonly string[] {
  const day = startedAt?.slice(0, 10);
  const ofDay = exams.filter((row) => !row.erased && day !== undefined && row.startedAt?.slice(0, 10) === day);
  const ofYard = horses.filter((row) => yard !== null && row.yard === yard);
  const all = [
    horse?.name,
    owner,
    yard,
    examiner,
    present,
    ...ofDay.flatMap((row) => [row.horse, row.owner, row.yard]),
    ...ofYard.flatMap((row) => [row.name, row.owner]),
  ];
  return [...new Set(all.filter((name): name is string => !!name?.trim()))].slice(0, most);
}

/** An ear that is told before each phrase which names may be spoken. */
export const expecting = (ear: Ear, namesOf: (exam: string) => readonly string[]): Ear => ({
  ...ear,
  hear: (stretch) => ear.hear({ ...stretch, names: namesOf(stretch.exam) }),
});
