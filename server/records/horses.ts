/** Horses over their visits: who was seen, each place over the years, who is due. Only confirmed exams count. */
import { Item } from '../../parser/contract/item.ts';
import type { Comparison, DueRow, HorseRow } from '../../parser/contract/wire.ts';
import type { Db } from './folder.ts';
import { fromJson } from './json.ts';

const counts = 'revision > 0 AND erased_at IS NULL';

/** Last seen first. Owner and yard as of the last visit. */
export const horses = (db: Db): readonly HorseRow[] =>
  db
    .prepare(
      `
  SELECT name, owner, yard, visits, lastAt FROM (
    SELECT horse AS name, owner, yard, started_at AS lastAt, count(*) OVER (PARTITION BY horse) AS visits,
           row_number() OVER (PARTITION BY horse ORDER BY started_at DESC, created DESC) AS n
    FROM exams WHERE horse IS NOT NULL AND ${counts})
  WHERE n = 1 ORDER BY lastAt DESC, name`,
    )
    .all() as HorseRow[];

/** One horse's confirmed visits, oldest first, each with the items that stand. */
export function compare(db: Db, name: string): Comparison {
  const visits = db
    .prepare(`SELECT id AS exam, started_at AS startedAt FROM exams WHERE horse = ? AND ${counts} ORDER BY started_at, created`)
    .all(name) as { exam: string; startedAt: string | null }[];
  return { horse: name, visits: visits.map((visit) => ({ ...visit, items: itemsOf(db, visit.exam) })) };
}
const itemsOf = (db: Db, exam: string): Item[] =>
  (db.prepare('SELECT item FROM items WHERE exam = ? ORDER BY position').all(exam) as { item: string }[]).map(({ item }) =>
    fromJson(Item, item, 'An item'),
  );

/**
 * Follow-ups spoken at each horse's last confirmed visit: a later visit has answered the earlier ones.
 * Soonest first; those without a number of days, weeks, months or years last.
 */
export function due(db: Db): readonly DueRow[] {
  const rows = db
    .prepare(
      `
    SELECT e.horse, e.owner, e.yard, e.id AS exam, e.started_at AS startedAt, i.item FROM items i JOIN exams e ON e.id = i.exam
    WHERE i.kind = 'follow-up' AND e.${counts.replace('AND ', 'AND e.')} AND (e.horse IS NULL OR NOT EXISTS (
      SELECT 1 FROM exams later WHERE later.horse = e.horse AND later.${counts.replace('AND ', 'AND later.')} AND (later.started_at > e.started_at OR (later.started_at = e.started_at AND later.created > e.created))))
    ORDER BY e.started_at, i.position`,
    )
    .all() as (Omit<DueRow, 'item' | 'due'> & { item: string })[];
  return rows
    .map((row): DueRow => {
      const item = fromJson(Item, row.item, 'An item');
      return { ...row, item, due: dueDay(row.startedAt, item) };
    })
    .filter(({ item }) => item.kind === 'follow-up' && (item.state === undefined || item.state === 'planned'))
    .sort((a, b) => (a.due ?? '9999').localeCompare(b.due ?? '9999'));
}

/** The day a spoken time falls on, counted from the day of the exam; of a range the earlier end. Null where no number was spoken. */
export function dueDay(startedAt: string | null, item: Item): string | null {
  if (!startedAt || item.kind !== 'follow-up' || !item.after || 'said' in item.after) return null;
  const { value, unit } = item.after;
  const n = Array.isArray(value) ? value[0] : value;
  const [year, month, day] = startedAt.slice(0, 10).split('-').map(Number) as [number, number, number];
  const days = unit === 'day' ? n : unit === 'week' ? n * 7 : 0;
  if (days || n === 0) return iso(new Date(Date.UTC(year, month - 1, day + Math.round(days))));
  const months = Math.round(unit === 'year' ? n * 12 : n);
  const lastOfMonth = new Date(Date.UTC(year, month - 1 + months + 1, 0)).getUTCDate();
  return iso(new Date(Date.UTC(year, month - 1 + months, Math.min(day, lastOfMonth))));
}
const iso = (date: Date): string => date.toISOString().slice(0, 10);
