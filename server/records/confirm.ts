/** Confirmed revisions: rows that never change, and the index of the latest one. */
import type { Draft } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { Exam } from '../../parser/contract/record.ts';
import { rowTeeth } from '../../parser/lexicon/teeth.ts';
import type { Db } from './folder.ts';
import { mustStand } from './events.ts';
import { fromJson, toJson } from './json.ts';
import { StoreError } from './storeError.ts';

/** Words of an item by which a person may look for it. */
export type ItemWords = (item: Item) => string;

/** Writes the revision just confirmed and makes it the one that is searched. */
export function writeRevision(db: Db, draft: Draft, record: Exam, words: ItemWords): void {
  const latest = draft.revisions.at(-1);
  if (draft.state !== 'confirmed' || !latest || record.id !== draft.id) throw new TypeError('Only a confirmed draft becomes a record.');
  db.prepare(
    'INSERT INTO revisions (exam, revision, confirmed_by, confirmed_at, reason, lexicon, record) VALUES (?, ?, ?, ?, ?, ?, ?)',
  ).run(draft.id, latest.revision, latest.by, latest.when, latest.reason ?? null, latest.lexicon ?? '', toJson(Exam, record, 'The record'));
  unindex(db, draft.id);
  index(db, record, words);
}

/** @throws StoreError `missing`, `erased`, `damaged` */
export function revision(db: Db, exam: string, n: number): Exam {
  mustStand(db, exam);
  const row = db.prepare('SELECT record FROM revisions WHERE exam = ? AND revision = ?').get(exam, n) as { record: string } | undefined;
  if (!row) throw new StoreError('missing', `There is no revision ${n} of this record.`);
  return fromJson(Exam, row.record, `Revision ${n} of this record`);
}

export function unindex(db: Db, exam: string): void {
  for (const table of ['spoken', 'items', 'utterances']) db.prepare(`DELETE FROM ${table} WHERE exam = ?`).run(exam);
}

/** Teeth an item speaks of one by one: of a gap both neighbours, of a row all of its teeth; "opposite" names no tooth of its own. */
export function teethOf(item: Item): readonly string[] {
  const place = 'place' in item ? item.place : null;
  if (!place) return [];
  if ('teeth' in place) return place.teeth;
  if ('spaces' in place) return [...new Set(place.spaces.flat())];
  return 'rows' in place ? place.rows.flatMap((row) => rowTeeth[row]) : [];
}
const named = (item: Item): string | null =>
  item.kind === 'finding' ? item.condition : item.kind === 'treatment' ? item.procedure : item.kind === 'follow-up' ? item.action : null;

function index(db: Db, record: Exam, words: ItemWords): void {
  const addUtterance = db.prepare('INSERT INTO utterances (exam, id, position, text, from_s, to_s, sound) VALUES (?, ?, ?, ?, ?, ?, ?)');
  const addItem = db.prepare(
    'INSERT INTO items (exam, id, position, kind, condition, presence, utterance, from_s, to_s, sound, words, item) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)',
  );
  const addTooth = db.prepare('INSERT OR IGNORE INTO item_teeth (exam, item, tooth) VALUES (?, ?, ?)');
  const addWords = db.prepare('INSERT INTO spoken (text, means, exam, ref) VALUES (?, ?, ?, ?)');
  const spoken = new Map(record.utterances.map((u) => [u.id, u]));
  record.utterances.forEach((u, i) => {
    addUtterance.run(record.id, u.id, i, u.text, u.at?.[0] ?? null, u.at?.[1] ?? null, u.sound ?? null);
    addWords.run(
      u.text,
      record.items
        .filter((item) => item.evidence.utterance === u.id)
        .map(words)
        .join(' ; '),
      record.id,
      u.id,
    );
  });
  record.items.forEach((item, i) => {
    const said = spoken.get(item.evidence.utterance);
    const at = said ? (item.evidence.at ?? said.at) : undefined;
    addItem.run(
      record.id,
      item.id,
      i,
      item.kind,
      named(item),
      item.kind === 'finding' ? item.presence : null,
      said?.id ?? null,
      at?.[0] ?? null,
      at?.[1] ?? null,
      said?.sound ?? null,
      words(item),
      JSON.stringify(item),
    );
    for (const tooth of teethOf(item)) addTooth.run(record.id, item.id, tooth);
    if (!said) addWords.run('', words(item), record.id, item.id);
  });
}
