/** The append-only log of each draft, and the row that lists it. */
import { DraftEvent, type Draft, type Header } from '../../parser/contract/draft.ts';
import { ExamRow } from '../../parser/contract/wire.ts';
import type { Db } from './folder.ts';
import { fromJson, toJson } from './json.ts';
import { StoreError } from './storeError.ts';

const lastSeq = (db: Db, exam: string): number =>
  (db.prepare('SELECT coalesce(max(seq), 0) AS seq FROM draft_events WHERE exam = ?').get(exam) as { seq: number }).seq;

/** @throws StoreError `missing` or `erased` */
export function mustStand(db: Db, exam: string): void {
  const row = db.prepare('SELECT erased_at FROM exams WHERE id = ?').get(exam) as { erased_at: string | null } | undefined;
  if (!row) throw new StoreError('missing', 'There is no such exam here.');
  if (row.erased_at) throw new StoreError('erased', 'This exam was erased. Nothing of it is left but the day it was erased.');
}

export function createExam(db: Db, id: string, header: Header, by: string, when: string): void {
  if (db.prepare('SELECT 1 FROM exams WHERE id = ?').get(id))
    throw new StoreError('exists', 'An exam of this number exists already. Nothing was changed.');
  db.prepare("INSERT INTO exams (id, created, state, horse, owner, yard, started_at) VALUES (?, ?, 'draft', ?, ?, ?, ?)").run(
    id,
    when,
    header.horse?.name ?? null,
    header.owner,
    header.yard,
    header.startedAt,
  );
  insert(db, id, 1, { event: 'opened', header, by, when });
}

const insert = (db: Db, exam: string, seq: number, event: DraftEvent): void => {
  db.prepare('INSERT INTO draft_events (exam, seq, event) VALUES (?, ?, ?)').run(exam, seq, toJson(DraftEvent, event, `Event ${seq}`));
};

/** Appends, and brings the list row up to the draft they fold to. @throws StoreError `stale` when the draft does not follow from what is stored */
export function append(db: Db, exam: string, events: readonly DraftEvent[], draft: Draft): void {
  mustStand(db, exam);
  const last = lastSeq(db, exam);
  if (draft.id !== exam || draft.seq !== last + events.length)
    throw new StoreError(
      'stale',
      'This exam was changed in another place meanwhile. Nothing was saved here. Open it anew and do it again.',
    );
  events.forEach((event, i) => insert(db, exam, last + 1 + i, event));
  const open = draft.doubts.filter((d) => !d.settled && d.doubt.state === 'open').length;
  const standing = draft.items.filter((i) => i.state === 'open' || i.state === 'kept').length;
  const confirmedAt = draft.revisions.at(-1)?.when ?? null;
  db.prepare(
    'UPDATE exams SET state = ?, horse = ?, owner = ?, yard = ?, started_at = ?, confirmed_at = ?, items = ?, doubts = ?, revision = ? WHERE id = ?',
  ).run(
    draft.state,
    draft.header.horse?.name ?? null,
    draft.header.owner,
    draft.header.yard,
    draft.header.startedAt,
    confirmedAt,
    standing,
    open,
    draft.revision,
    exam,
  );
}

/** @throws StoreError `missing`, `erased`, `damaged` */
export function events(db: Db, exam: string): readonly DraftEvent[] {
  mustStand(db, exam);
  const rows = db.prepare('SELECT seq, event FROM draft_events WHERE exam = ? ORDER BY seq').all(exam) as { seq: number; event: string }[];
  return rows.map(({ seq, event }, i) => {
    if (seq !== i + 1)
      throw new StoreError(
        'damaged',
        `A line is missing from this exam (${i + 1}). It was left as it is; the other records are not touched. Put back a backup.`,
      );
    return fromJson(DraftEvent, event, `Line ${seq} of this exam`);
  });
}

/** Latest first; an erased exam stays as a row without words. */
export function examRows(db: Db): readonly ExamRow[] {
  const rows = db
    .prepare(
      `SELECT id, state, horse, owner, yard, started_at AS startedAt, confirmed_at AS confirmedAt, items, doubts, revision, erased_at IS NOT NULL AS erased
    FROM exams ORDER BY coalesce(started_at, created) DESC, created DESC, id`,
    )
    .all() as (Omit<ExamRow, 'erased'> & { erased: number })[];
  return rows.map((row) => ExamRow.parse({ ...row, erased: row.erased === 1 }));
}

/** Names are compared without regard to large and small letters. */
export const examsOf = (db: Db, horse: string): readonly string[] =>
  (db.prepare('SELECT id FROM exams WHERE horse = ? AND erased_at IS NULL').all(horse) as { id: string }[]).map(({ id }) => id);
