/** Finding what was spoken or recorded. User words never become query syntax. */
import { Item } from '../../parser/contract/item.ts';
import type { SearchHit, SearchQuery } from '../../parser/contract/wire.ts';
import type { Db } from './folder.ts';
import { fromJson } from './json.ts';

/** Each word quoted, the last as a beginning too; null when nothing is left to look for. */
export function quoted(words: string): string | null {
  const tokens = words.match(/[\p{L}\p{N}]+/gu) ?? [];
  return tokens.length ? tokens.map((token) => `"${token}"*`).join(' ') : null;
}
const like = (part: string): string => `%${part.replace(/[\\%_]/g, '\\$&')}%`;

interface Row {
  exam: string;
  horse: string | null;
  startedAt: string | null;
  utterance: string | null;
  text: string | null;
  item: string | null;
  words: string | null;
  from_s: number | null;
  to_s: number | null;
  sound: string | null;
  soundErased: number;
}
/** Sound that lies in another exam's journal is there as long as that one's is. */
const columns = (sound: string): string =>
  `e.id AS exam, e.horse, e.started_at AS startedAt, max(e.sound_erased, coalesce((SELECT sound_erased FROM exams j WHERE j.id = ${sound}), 0)) AS soundErased`;

/** Confirmed exams only, latest first, in the order spoken. Dates are ISO days, both ends included. */
export function search(db: Db, query: SearchQuery): readonly SearchHit[] {
  const match = query.words === undefined || query.words.trim() === '' ? undefined : quoted(query.words);
  if (match === null) return [];
  const where: string[] = ['e.erased_at IS NULL', 'e.revision > 0'];
  const values: (string | number)[] = [];
  const narrow = (sql: string, ...given: (string | number)[]): void => {
    where.push(sql);
    values.push(...given);
  };
  if (query.horse?.trim()) narrow("e.horse LIKE ? ESCAPE '\\'", like(query.horse.trim()));
  if (query.from) narrow('substr(e.started_at, 1, 10) >= ?', query.from.slice(0, 10));
  if (query.to) narrow('substr(e.started_at, 1, 10) <= ?', query.to.slice(0, 10));
  const byItem = query.condition || query.tooth || query.presence || query.kind || match === undefined;
  const rows = byItem ? items(db, query, match, where, values) : utterances(db, match!, where, values, query.limit);
  return rows.map((row): SearchHit => ({
    exam: row.exam,
    horse: row.horse,
    startedAt: row.startedAt,
    utterance: row.utterance,
    text: row.text ?? row.words ?? '',
    item: row.item === null ? null : fromJson(Item, row.item, 'An item'),
    at: row.from_s === null || row.to_s === null ? null : [row.from_s, row.to_s],
    audio: row.from_s !== null && row.soundErased === 0,
    ...(row.sound !== null && { sound: row.sound }),
  }));
}

function items(
  db: Db,
  query: SearchQuery,
  match: string | undefined,
  where: readonly string[],
  values: readonly (string | number)[],
): readonly Row[] {
  const more: [string, string | undefined][] = [
    ['i.condition = ?', query.condition],
    ['i.presence = ?', query.presence],
    ['i.kind = ?', query.kind],
    ['EXISTS (SELECT 1 FROM item_teeth t WHERE t.exam = i.exam AND t.item = i.id AND t.tooth = ?)', query.tooth],
    ['(i.exam, coalesce(i.utterance, i.id)) IN (SELECT exam, ref FROM spoken WHERE spoken MATCH ?)', match],
  ];
  const asked = more.filter((pair): pair is [string, string] => !!pair[1]);
  return db
    .prepare(
      `SELECT ${columns('i.sound')}, i.utterance, u.text, i.item, i.words, i.from_s, i.to_s, i.sound
    FROM items i JOIN exams e ON e.id = i.exam LEFT JOIN utterances u ON u.exam = i.exam AND u.id = i.utterance
    WHERE ${[...where, ...asked.map(([sql]) => sql)].join(' AND ')} ORDER BY e.started_at DESC, e.id, i.position LIMIT ?`,
    )
    .all(...values, ...asked.map(([, value]) => value), query.limit) as Row[];
}

/** One hit a phrase, with the first thing it became. */
function utterances(db: Db, match: string, where: readonly string[], values: readonly (string | number)[], limit: number): readonly Row[] {
  return db
    .prepare(
      `SELECT ${columns('coalesce(u.sound, i.sound)')}, u.id AS utterance, u.text, i.item, i.words, coalesce(u.from_s, i.from_s) AS from_s, coalesce(u.to_s, i.to_s) AS to_s, coalesce(u.sound, i.sound) AS sound
    FROM spoken s JOIN exams e ON e.id = s.exam LEFT JOIN utterances u ON u.exam = s.exam AND u.id = s.ref
    LEFT JOIN items i ON i.exam = s.exam AND i.id = (SELECT id FROM items x WHERE x.exam = s.exam AND (x.utterance = s.ref OR x.id = s.ref) ORDER BY x.position LIMIT 1)
    WHERE spoken MATCH ? AND ${where.join(' AND ')} ORDER BY e.started_at DESC, e.id, u.position, i.position LIMIT ?`,
    )
    .all(match, ...values, limit) as Row[];
}
