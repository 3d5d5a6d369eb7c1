/** What both pages share: the sheet, its head and foot, and the sections of an exam in words. */
import type { Header } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import type { Exam } from '../../parser/contract/record.ts';
import type { Caution } from '../../parser/contract/wire.ts';
import { cautionsFor } from './cautions.ts';
import { html, type Markup } from './html.ts';
import { mouthDrawing } from './mouth.ts';
import {
  amountWords,
  capital,
  findingSentences,
  followUpSentence,
  medicationSentence,
  notExaminedSentence,
  partOf,
  parts,
  sedationSentence,
  treatmentSentence,
  type Reader,
} from './words.ts';

export interface Sheet {
  /** Not confirmed yet: the page says so. */
  readonly draft: boolean;
  /** Rows and regions that nobody spoke of, in words. */
  readonly left?: readonly string[];
  /** Address of the style sheet (`paperStyle`). */
  readonly style: string;
}

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
/** "4 March 2026" from an ISO time, as the examiner's clock had it. */
export function dayWords(iso: string | null): string {
  const [year, month, day] = (iso ?? '').slice(0, 10).split('-').map(Number);
  return year && month && day ? `${day} ${months[month - 1]} ${year}` : '';
}
export function horseWords(horse: Header['horse']): string {
  const age =
    horse?.age &&
    `${horse.age.about ? 'about ' : ''}${horse.age.rising ? 'rising ' : ''}${amountWords(horse.age.value)} ${horse.age.unit}${horse.age.value === 1 ? '' : 's'} old`;
  return [
    [horse?.colour, horse?.breed, horse?.sex].filter(Boolean).join(' '),
    age,
    horse?.height,
    horse?.use,
    horse?.microchip && `microchip ${horse.microchip}`,
  ]
    .filter(Boolean)
    .map(String)
    .map((w, i) => (i ? w : capital(w)))
    .join(', ');
}

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;
export const kind = <K extends Item['kind']>(items: readonly Item[], wanted: K): readonly Of<K>[] =>
  items.filter((item): item is Of<K> => item.kind === wanted);

const order = (items: readonly Of<'follow-up'>[]): readonly Of<'follow-up'>[] =>
  [...items].sort((a, b) => Number(b.action === 'refer-to-veterinarian') - Number(a.action === 'refer-to-veterinarian'));
/** Sentences of one section; an empty one is left out whole. */
export const section = (title: string, sentences: readonly (string | Markup)[]): Markup | null =>
  sentences.length
    ? html`<section>
        <h2>${title}</h2>
        <p>${sentences.map((s, i) => html`${i ? ' ' : ''}${s}`)}</p>
      </section>`
    : null;

export function found(items: readonly Item[], reader: Reader): Markup | null {
  const findings = kind(items, 'finding');
  const unseen = kind(items, 'not-examined').map(notExaminedSentence);
  const rows = parts.flatMap((part) => {
    const words = findingSentences(
      findings.filter((f) => partOf(f) === part),
      reader,
    );
    return words.length
      ? [
          html`<dt>${part}</dt>
            <dd>${words.join(' ')}</dd>`,
        ]
      : [];
  });
  if (rows.length === 0 && unseen.length === 0) return null;
  return html`<section>
    <h2>What was found</h2>
    <dl>
      ${rows}${
        unseen.length > 0 &&
        html`<dt>Not examined</dt>
          <dd>${unseen.join(' ')}</dd>`
      }
    </dl>
  </section>`;
}
const ahead: ReadonlySet<string> = new Set(['planned', 'advised']);
export function done(items: readonly Item[], reader: Reader): Markup | null {
  const work = kind(items, 'treatment')
    .filter((t) => !ahead.has(t.state))
    .map((t) => treatmentSentence(t, reader));
  return section('What was done', [
    ...kind(items, 'sedation').map(sedationSentence),
    ...kind(items, 'medication')
      .filter((m) => m.state !== 'planned')
      .map(medicationSentence),
    ...work,
  ]);
}
/** What was marked for the veterinarian by a spoken command, as the items' own words. */
export function marked(exam: Exam): readonly Item[] {
  const ids = new Set(exam.commands.flatMap((c) => (c.command === 'flag-for-veterinarian' ? (c.targets ?? []) : [])));
  return exam.items.filter((item) => ids.has(item.id));
}
export function next(exam: Exam, reader: Reader): Markup | null {
  const plans = kind(exam.items, 'treatment')
    .filter((t) => ahead.has(t.state))
    .map((t) => treatmentSentence(t, reader));
  const flags = findingSentences(kind(marked(exam), 'finding'), reader).map((words) => `Marked for the veterinarian: ${words}`);
  return section('What comes next', [
    ...order(kind(exam.items, 'follow-up')).map(followUpSentence),
    ...flags,
    ...plans,
    ...kind(exam.items, 'medication')
      .filter((m) => m.state === 'planned')
      .map(medicationSentence),
  ]);
}
export const leftOut = ({ left }: Sheet): Markup | null =>
  left?.length ? html`<p class="left-out">Not spoken of at this visit: ${left.join('; ')}.</p>` : null;
export function cautions(items: readonly Item[]): Markup | null {
  const apply = cautionsFor(items);
  return apply.length
    ? html`<section class="cautions">
        <h2>To mind, and who decides</h2>
        <ul>
          ${apply.map((c: Caution) => html`<li>${c.say} ${c.who} <cite>${c.source}.</cite></li>`)}
        </ul>
      </section>`
    : null;
}
export const drawing = (items: readonly Item[]): Markup =>
  html`<figure>
    ${mouthDrawing(items)}
    <figcaption>
      Facing the horse, upper teeth above. ● found ◐ suspected ○ ruled out, a bar: worked on, a faint outline: not spoken of. First digit: 1
      upper right, 2 upper left, 3 lower left, 4 lower right (5 to 8 milk teeth); then 01 at the front to 11 at the back.
    </figcaption>
  </figure>`;

/** Who confirmed, when, and why it was changed since. */
export function foot(exam: Exam, { draft }: Sheet): Markup {
  const latest = exam.revisions.at(-1);
  const changed = exam.revisions.filter((r) => r.reason).map((r) => `Changed since, on ${dayWords(r.when)}, because: ${r.reason}.`);
  const confirmed =
    latest && !draft
      ? `Checked and confirmed by ${latest.by} on ${dayWords(latest.when)}.`
      : 'Not confirmed yet: this is a draft and may still change.';
  return html`<footer>
    <p>${[confirmed, ...changed].join(' ')}</p>
    <p>
      Spoken during the examination and written down as it was said. It records what was found and done; it is no diagnosis. Local law and
      licensed practice decide who may do what.
    </p>
  </footer>`;
}
export function sheet(title: string, options: Sheet, body: Markup): string {
  const length = body.text.replace(/<svg.*?<\/svg>/s, '').replace(/<[^>]*>/g, '').length;
  const dense = length > 4300 ? 'densest' : length > 2800 ? 'dense' : 'plain';
  return `<!doctype html>\n${
    html`<html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${title}</title>
        <link rel="stylesheet" href="${options.style}" />
      </head>
      <body>
        <main class="${dense}">${options.draft && html`<p class="draft">Draft, not confirmed</p>`}${body}</main>
      </body>
    </html>`.text
  }\n`;
}
export function head(exam: Exam, lead: string): Markup {
  const { horse, owner, yard, examiner, startedAt } = exam;
  const rows = [
    ['Owner', owner],
    ['Yard', yard],
    ['Examined by', examiner],
    ['On', dayWords(startedAt)],
  ].filter((row) => row[1]);
  return html`<header>
    <div>
      <p class="lead">${lead}</p>
      <h1>${horse?.name ?? 'Horse without a name yet'}</h1>
      <p class="horse">${horseWords(horse)}</p>
    </div>
    <table>
      ${rows.map(
        ([name, value]) =>
          html`<tr>
            <th scope="row">${name}</th>
            <td>${value}</td>
          </tr>`,
      )}
    </table>
  </header>`;
}
