import type { Exam } from '../../parser/contract/record.ts';
import { html } from './html.ts';
import { cautions, done, drawing, foot, found, head, kind, leftOut, next, section, sheet, type Sheet } from './letter.ts';
import { sentence } from './words.ts';

/** Facts an owner reads about the visit. Money, and what was jotted for oneself, is on no page. */
const shown: ReadonlySet<string> = new Set(['behaviour', 'feed', 'bit', 'use', 'vaccination', 'tetanus']);

/** The page for the owner: plain words, one A4 sheet, no script, nothing but `options.style` loaded. */
export function ownerPage(exam: Exam, options: Sheet): string {
  const visit = kind(exam.items, 'fact')
    .filter((f) => shown.has(f.about))
    .map((f) => sentence(f.said));
  return sheet(
    `${exam.horse?.name ?? 'Horse'}, page for the owner`,
    options,
    html` ${head(exam, 'Dental visit')} ${drawing(exam.items)} ${found(exam.items, 'owner')} ${done(exam.items, 'owner')}
    ${next(exam, 'owner')} ${section('The visit', visit)} ${leftOut(options)} ${cautions(exam.items)} ${foot(exam, options)}`,
  );
}
