import type { Exam } from '../../parser/contract/record.ts';
import { scales, type ScaleId } from '../../parser/lexicon/scales.ts';
import { html } from './html.ts';
import { cautions, done, drawing, foot, found, head, kind, leftOut, marked, next, section, sheet, type Sheet } from './letter.ts';
import { capital, findingSentences, followUpSentence, listed, plain, sentence } from './words.ts';

/** What a colleague needs of the visit. Money is on no page. */
const shown: ReadonlySet<string> = new Set([
  'history',
  'earlier-treatment',
  'behaviour',
  'consent',
  'method',
  'gag',
  'light',
  'heart-rate',
  'medication',
  'use',
  'feed',
  'bit',
  'vaccination',
  'tetanus',
  'photographs',
  'present',
]);

/** The letter to the veterinarian: the trade's terms, why it is sent first, scales with their source. */
export function vetLetter(exam: Exam, options: Sheet): string {
  const { items } = exam;
  const referred = kind(items, 'follow-up')
    .filter((f) => f.action === 'refer-to-veterinarian' && f.state !== 'not-needed')
    .map(followUpSentence);
  const suspected = kind(items, 'finding').filter((f) => f.presence === 'suspected');
  const why = [...referred, ...findingSentences([...new Set([...kind(marked(exam), 'finding'), ...suspected])], 'vet')];
  const visit = kind(items, 'fact')
    .filter((f) => shown.has(f.about))
    .map((f) => sentence(`${capital(plain(f.about))}: ${f.said}`));
  const used = [
    ...new Set(kind(items, 'finding').flatMap((f) => (f.grade && f.grade.scale !== 'spoken' ? [f.grade.scale] : []))),
  ] as ScaleId[];
  return sheet(
    `${exam.horse?.name ?? 'Horse'}, letter to the veterinarian`,
    options,
    html` ${head(exam, 'Dental examination: for the veterinarian')} ${drawing(items)}
    ${section('Why this letter', why.length ? why : ['For your records.'])} ${found(items, 'vet')} ${done(items, 'vet')}
    ${next(exam, 'vet')} ${section('The visit', visit)}
    ${section(
      'Notes',
      kind(items, 'note').map((note) => sentence(note.text)),
    )}
    ${leftOut(options)}
    ${used.length > 0 && html`<p class="left-out">Teeth are numbered by the modified Triadan system. Grades as spoken, on these scales: ${listed(used.map((scale) => `${scales[scale].label} (${scales[scale].source})`))}.</p>`}
    ${cautions(items)} ${foot(exam, options)}`,
  );
}
