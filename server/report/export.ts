/** An exam as a file for other programs: JSON by the contract, or a table of its items. */
import type { Draft, Utterance } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { Exam } from '../../parser/contract/record.ts';
import { placeWords } from './words.ts';

/** Talk that is no part of the exam stays out: such words become one "…" each run, a phrase of nothing else is left out. */
function withoutTalk({ heard: _heard, ...utterance }: Utterance): Utterance[] {
  if (!utterance.words.some(({ as }) => as === 'leftover')) return [utterance];
  if (!utterance.words.some(({ as }) => as !== 'leftover' && as !== 'filler')) return [];
  const words = utterance.words.flatMap((word, i, all) =>
    word.as !== 'leftover' ? [word] : all[i - 1]?.as === 'leftover' ? [] : [{ w: '…', as: 'leftover' }],
  );
  return [{ ...utterance, text: words.map(({ w }) => w).join(' '), words }];
}

/** What stands of a draft or a confirmed exam. Evidence points into the words as exported. @throws nothing that fits the contract */
export function exportExam(draft: Draft): Exam {
  const places = new Map(draft.utterances.map((u) => [u.id, shifted(u)]));
  const items = draft.items
    .filter((i) => i.state === 'open' || i.state === 'kept')
    .map(({ item }): Item => ({
      ...item,
      evidence: { ...item.evidence, words: item.evidence.words.map((i) => places.get(item.evidence.utterance)?.[i] ?? i) },
    }));
  return Exam.parse({
    ...draft.header,
    id: draft.id,
    utterances: draft.utterances.flatMap(withoutTalk),
    items,
    commands: draft.commands,
    doubts: draft.doubts.map(({ doubt, settled }) => (settled ? { ...doubt, state: 'settled' } : doubt)),
    hints: draft.hints,
    revisions: draft.revisions,
  });
}
/** Where each word stands once runs of talk are one "…". */
const shifted = ({ words }: Utterance): readonly number[] => {
  let at = -1;
  return words.map((word, i) => (word.as === 'leftover' && words[i - 1]?.as === 'leftover' ? at : ++at));
};

const columns = [
  'exam',
  'date',
  'horse',
  'kind',
  'what',
  'presence',
  'when',
  'place',
  'severity',
  'grade',
  'measures',
  'surfaces',
  'qualifiers',
  'state',
  'details',
  'item',
] as const;
/** RFC 4180: quoted where needed, CRLF. A cell that a spreadsheet would take for a formula begins with an apostrophe. */
export function itemsCsv(exams: readonly Exam[]): string {
  const rows = exams.flatMap((exam) =>
    exam.items.map((item) => {
      const row = rowOf(exam, item);
      return columns.map((name) => cell(row[name])).join(',');
    }),
  );
  return `${[columns.join(','), ...rows].join('\r\n')}\r\n`;
}
const cell = (value: unknown): string => {
  const text = value === undefined || value === null ? '' : String(value);
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};
function rowOf(exam: Exam, item: Item): Partial<Record<(typeof columns)[number], unknown>> {
  const base = {
    exam: exam.id,
    date: exam.startedAt?.slice(0, 10),
    horse: exam.horse?.name,
    kind: item.kind,
    item: item.id,
    ...('place' in item && { place: placeWords(item.place) }),
  };
  const amount = (v: number | [number, number] | undefined): string => (Array.isArray(v) ? v.join(' to ') : String(v ?? ''));
  switch (item.kind) {
    case 'finding':
      return {
        ...base,
        what: item.condition,
        presence: item.presence,
        when: item.when,
        severity: item.severity ?? item.severitySaid,
        grade: item.grade && `${item.grade.scale} ${item.grade.value}`,
        measures: item.measures
          ?.map((m) => `${m.what} ${m.value === undefined ? m.said : `${amount(m.value)} ${m.unit ?? ''}`}`.trim())
          .join('; '),
        surfaces: item.surfaces?.join(' '),
        qualifiers: item.qualifiers?.join(' '),
        details: item.said,
      };
    case 'treatment':
      return {
        ...base,
        what: item.procedure,
        state: item.state,
        measures: item.amountMm === undefined ? item.amountSaid : `${amount(item.amountMm)} mm`,
        surfaces: item.surfaces?.join(' '),
        details: [item.instrument, item.waterCooled && 'water cooled', item.outcome, item.reason].filter(Boolean).join('; '),
      };
    case 'sedation':
      return {
        ...base,
        what: item.agent,
        state: item.given ? 'given' : 'not given',
        measures: item.dose && (item.dose.said ?? `${amount(item.dose.value)} ${item.dose.unit ?? ''}`.trim()),
        details: [item.route, item.byName ?? (typeof item.by === 'string' ? item.by : item.by?.name)].filter(Boolean).join('; '),
      };
    case 'medication':
      return {
        ...base,
        what: item.agent,
        state: item.state,
        measures: item.dose && (item.dose.said ?? `${amount(item.dose.value)} ${item.dose.unit ?? ''}`.trim()),
        details: [item.route, item.for].filter(Boolean).join('; '),
      };
    case 'follow-up':
      return {
        ...base,
        what: item.action,
        state: item.state,
        details: [
          item.after && ('said' in item.after ? item.after.said : `${amount(item.after.value)} ${item.after.unit}`),
          item.reason,
          item.text,
        ]
          .filter(Boolean)
          .join('; '),
      };
    case 'not-examined':
      return { ...base, what: item.means, details: item.reason };
    case 'fact':
      return { ...base, what: item.about, details: item.said };
    case 'note':
      return { ...base, details: item.text };
  }
}
