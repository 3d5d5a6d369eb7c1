import Database from 'better-sqlite3';
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openStore, StoreError, type Store } from '../../server/records/index.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { split } from '../../server/session/move.ts';
import { by, finding, header, hook, said, when } from '../session/made.ts';
import { add, confirm, confirmedExam } from './exam.ts';

let dir: string;
let store: Store;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'quidnote-records-'));
  store = openStore(join(dir, 'data'));
});
afterEach(() => {
  store.close();
  rmSync(dir, { recursive: true, force: true });
});
const raw = (): Database.Database => new Database(join(dir, 'data', 'records.sqlite'));
const code = (work: () => unknown): string => {
  try {
    work();
  } catch (error) {
    if (error instanceof StoreError) return error.code;
    throw error;
  }
  return 'none';
};

describe('the log of a draft', () => {
  test('comes back as it was written, and folds to the same draft after a restart', () => {
    store.createExam('e1', header(), by, when);
    const draft = add(
      store,
      'e1',
      said('e1:0', 'one oh six hook', { items: [hook('106', 4)] }, [1, 2]),
      said('e1:9', 'scratch that', { commands: [{ command: 'strike-last' }] }, [5, 6]),
    );
    store.close();
    store = openStore(join(dir, 'data'));
    expect(foldDraft('e1', store.events('e1'))).toEqual(draft);
    expect(store.exams()).toMatchObject([{ id: 'e1', state: 'draft', horse: 'Juniper', items: 0, revision: 0, erased: false }]);
  });
  test('refuses events that do not follow from what is stored, and saves none of them', () => {
    store.createExam('e1', header(), by, when);
    const stale = applyEvent(foldDraft('e1', store.events('e1')), said('e1:0', 'hook'));
    add(store, 'e1', said('e1:1', 'one'));
    expect(code(() => store.append('e1', [said('e1:0', 'hook')], stale))).toBe('stale');
    expect(store.events('e1')).toHaveLength(2);
  });
  test('no event and no revision is ever changed or removed', () => {
    confirmedExam(store, 'e1', 'Juniper', when, said('e1:0', 'one oh six hook', { items: [hook('106')] }));
    const db = raw();
    for (const sql of [
      "UPDATE draft_events SET event = '{}'",
      'DELETE FROM draft_events',
      "UPDATE revisions SET record = '{}'",
      'DELETE FROM revisions',
    ])
      expect(() => db.exec(sql)).toThrow(/never/);
    db.close();
  });
  test('a line that does not fit the contract is refused on its way in and on its way out', () => {
    store.createExam('e1', header(), by, when);
    const bad = { event: 'said', when, result: { id: 'x' } } as never;
    expect(() => store.append('e1', [bad], { ...foldDraft('e1', store.events('e1')), seq: 2 })).toThrow(/does not fit/);
    const db = raw();
    db.prepare('INSERT INTO draft_events (exam, seq, event) VALUES (?, 2, ?)').run('e1', '{"event":"said","when":"x","secret":"juniper"}');
    db.close();
    expect(code(() => store.events('e1'))).toBe('damaged');
    try {
      store.events('e1');
    } catch (error) {
      expect((error as Error).message).not.toMatch(/juniper/);
    }
  });
});

describe('the data folder', () => {
  test('is for its owner only', () => {
    add1();
    expect(statSync(join(dir, 'data')).mode & 0o777).toBe(0o700);
    for (const name of readdirSync(join(dir, 'data')))
      expect([name, statSync(join(dir, 'data', name)).mode & 0o777]).toEqual([name, 0o600]);
  });
  test('has one live writer, and any number of readers', () => {
    add1();
    expect(code(() => openStore(join(dir, 'data')))).toBe('locked');
    const reader = openStore(join(dir, 'data'), { write: false });
    expect(reader.exams()).toHaveLength(1);
    reader.close();
    expect(store.exams()).toHaveLength(1);
  });
  test('written by a newer version is left alone', () => {
    store.close();
    const db = raw();
    db.pragma('user_version = 99');
    db.close();
    expect(code(() => openStore(join(dir, 'data')))).toBe('newer');
    const back = raw();
    back.pragma('user_version = 1');
    back.close();
    store = openStore(join(dir, 'data'));
  });
  test('a file that is no database is refused and not touched', () => {
    store.close();
    const file = join(dir, 'data', 'records.sqlite');
    rmSync(`${file}-wal`, { force: true });
    const rubbish = 'this is no database '.repeat(400);
    writeFileSync(file, rubbish);
    expect(code(() => openStore(join(dir, 'data')))).toBe('damaged');
    expect(readFileSync(file, 'utf8')).toBe(rubbish);
    rmSync(file);
    store = openStore(join(dir, 'data'));
  });
  const add1 = (): void => store.createExam('e1', header(), by, when);
});

describe('records', () => {
  test('an amended record keeps every earlier revision readable', () => {
    const first = confirmedExam(store, 'e1', 'Juniper', when, said('e1:0', 'one oh six hook', { items: [hook('106', 4)] }));
    const item = first.items[0]!.item;
    add(
      store,
      'e1',
      { event: 'reopened', reason: 'wrong side', by, when },
      { event: 'typed', item: { ...item, id: 'e1:t1', revises: item.id, place: { teeth: ['206'] } } as never, by, when },
    );
    expect(store.exams()[0]).toMatchObject({ state: 'draft', revision: 1 });
    confirm(store, 'e1', '2026-03-05T10:00:00+00:00');
    expect(store.revision('e1', 1).items).toMatchObject([{ place: { teeth: ['106'] } }]);
    expect(store.revision('e1', 2)).toMatchObject({
      items: [{ place: { teeth: ['206'] } }],
      revisions: [{ revision: 1 }, { revision: 2, reason: 'wrong side' }],
    });
    expect(store.search({ tooth: '106', limit: 10 })).toEqual([]);
    expect(store.search({ tooth: '206', limit: 10 })).toHaveLength(1);
    expect(code(() => store.revision('e1', 3))).toBe('missing');
  });
  test('one horse over the years, and who is due', () => {
    const recheck = (after: object, more: object = {}) => ({ kind: 'follow-up', action: 'recheck', after, ...more });
    confirmedExam(
      store,
      'a1',
      'Juniper',
      '2025-08-31T09:00:00+01:00',
      said('a1:0', 'hook', { items: [hook('106', 2), recheck({ value: 6, unit: 'month' })] }),
    );
    confirmedExam(
      store,
      'a2',
      'juniper',
      '2026-03-04T09:00:00+00:00',
      said('a2:0', 'hook', {
        items: [
          hook('106', 4),
          recheck({ value: 12, unit: 'month' }),
          recheck({ said: 'in the spring' }),
          recheck({ value: 1, unit: 'week' }, { state: 'declined' }),
        ],
      }),
    );
    confirmedExam(
      store,
      'b1',
      'Bramble',
      '2025-08-31T09:00:00+01:00',
      said('b1:0', 'see her', { items: [recheck({ value: [6, 8], unit: 'month' })] }),
    );
    store.createExam('c1', header('Teasel'), by, when);
    expect(store.horses()).toMatchObject([
      { name: 'juniper', visits: 2, lastAt: '2026-03-04T09:00:00+00:00' },
      { name: 'Bramble', visits: 1 },
    ]);
    expect(store.compare('Juniper').visits.map((v) => [v.exam, v.items.length])).toEqual([
      ['a1', 2],
      ['a2', 4],
    ]);
    // Half a year after 31 August is the last of February: no month is skipped.
    expect(store.due().map((d) => [d.horse, d.due])).toEqual([
      ['Bramble', '2026-02-28'],
      ['juniper', '2027-03-04'],
      ['juniper', null],
    ]);
  });
});

describe('search', () => {
  beforeEach(() => {
    confirmedExam(
      store,
      'e1',
      'Juniper',
      '2026-03-04T09:00:00+00:00',
      said('e1:0', 'one oh six hook four mil', { items: [hook('106', 4)] }, [1, 2]),
      said(
        'e1:5',
        'three oh nine three ten valve diastema',
        { items: [finding('diastema', { spaces: [['309', '310']] }, { qualifiers: ['valve'] })] },
        [5, 7],
      ),
      said('e1:8', 'points on the uppers', { items: [finding('sharp-enamel-points', { rows: ['upper-right', 'upper-left'] })] }, [8, 9]),
      said('e1:9', 'mind the gate', {}, [10, 11]),
    );
    confirmedExam(
      store,
      'e2',
      'Bramble',
      '2025-03-04T09:00:00+00:00',
      said('e2:0', 'no hooks', { items: [finding('hook', null, { presence: 'absent' })] }, [1, 2]),
    );
    store.createExam('e3', header('Teasel'), by, when);
    add(store, 'e3', said('e3:0', 'one oh six hook', { items: [hook('106')] }));
  });
  const ids = (query: object): (string | null)[] => store.search({ limit: 100, ...query }).map((h) => h.utterance);
  test('finds words as spoken, what they became, and plays the moment', () => {
    expect(store.search({ words: 'valve', limit: 10 })).toMatchObject([
      {
        exam: 'e1',
        horse: 'Juniper',
        text: 'three oh nine three ten valve diastema',
        at: [5, 7],
        audio: true,
        item: { condition: 'diastema' },
      },
    ]);
    expect(ids({ words: 'gate' })).toEqual(['e1:9']);
    expect(ids({ words: 'enamel' })).toEqual(['e1:8']);
  });
  test('finds by condition, tooth, presence, horse and day; a draft is never found', () => {
    expect(ids({ condition: 'hook' })).toEqual(['e1:0', 'e2:0']);
    expect(ids({ condition: 'hook', presence: 'absent' })).toEqual(['e2:0']);
    expect(ids({ tooth: '310' })).toEqual(['e1:5']);
    expect(ids({ tooth: '108' })).toEqual(['e1:8']);
    expect(ids({ horse: 'bram' })).toEqual(['e2:0']);
    expect(ids({ condition: 'hook', from: '2026-01-01' })).toEqual(['e1:0']);
    expect(ids({ to: '2025-03-04' })).toEqual(['e2:0']);
    expect(ids({ words: 'hook', tooth: '106' })).toEqual(['e1:0']);
    expect(ids({ words: 'valve', condition: 'hook' })).toEqual([]);
  });
  test.each(['"', "' OR 1=1 --", 'NEAR(', 'hook AND', 'text:hook', '*', '-', 'a"b', '%', '{text}: hook', 'hook^2', '\\', '😀'])(
    'words are never syntax: %s',
    (words) => {
      expect(() => ids({ words, horse: words, condition: words, tooth: words })).not.toThrow();
      expect(() => ids({ words })).not.toThrow();
    },
  );
  test('a percent sign finds no horse', () => expect(ids({ horse: '%' })).toEqual([]));
});

describe('erasing', () => {
  const bytes = (): string =>
    readdirSync(join(dir, 'data'))
      .map((name) => readFileSync(join(dir, 'data', name), 'latin1'))
      .join('');
  test('one horse: no word of it is left in any file, a row without words stays, the others are untouched', () => {
    confirmedExam(store, 'e1', 'Quillwort', '2026-03-04T09:00:00+00:00', said('e1:0', 'zanzibar hook', { items: [hook('106')] }, [1, 2]));
    confirmedExam(store, 'e2', 'Bramble', '2026-03-05T09:00:00+00:00', said('e2:0', 'timbuktu hook', { items: [hook('107')] }, [1, 2]));
    store.createExam('e3', header('quillwort'), by, when);
    expect(bytes()).toMatch(/zanzibar/);
    expect([...store.examsOf('Quillwort')].sort()).toEqual(['e1', 'e3']);
    for (const id of store.examsOf('Quillwort')) store.eraseExam(id, when);
    expect(store.examsOf('Quillwort')).toEqual([]);
    expect(bytes()).not.toMatch(/zanzibar|quillwort/i);
    expect(bytes()).toMatch(/timbuktu/);
    expect(store.exams().find((e) => e.id === 'e1')).toMatchObject({ erased: true, horse: null, owner: null, yard: null });
    expect(store.search({ words: 'zanzibar', limit: 10 })).toEqual([]);
    expect(store.search({ words: 'hook', limit: 10 })).toHaveLength(1);
    expect(code(() => store.events('e1'))).toBe('erased');
    expect(code(() => add(store, 'e1', said('e1:9', 'x')))).toBe('erased');
  });
  test('the sound alone: the words stay, nothing claims to be playable', () => {
    confirmedExam(store, 'e1', 'Juniper', when, said('e1:0', 'one oh six hook', { items: [hook('106')] }, [1, 2]));
    store.eraseSound('e1');
    expect(store.search({ words: 'hook', limit: 10 })).toMatchObject([{ audio: false, text: 'one oh six hook' }]);
    expect(store.soundErased('e1')).toBe(true);
  });
  test('words that were split off to another horse leave the log they came from too', () => {
    store.createExam('e1', header('Juniper'), by, when);
    const draft = add(
      store,
      'e1',
      said('e1:0', 'one oh six hook', { items: [hook('106')] }, [1, 2]),
      said('e1:5', 'zanzibar hook', { items: [hook('206')] }, [5, 6]),
    );
    const moved = split(draft, 'e1:5', 'e2', { horse: { name: 'Bramble' } }, { by, when })!;
    store.appendAll([
      { exam: 'e2', events: moved.into, draft: foldDraft('e2', moved.into), fresh: true },
      { exam: 'e1', events: moved.from, draft: moved.from.reduce(applyEvent, draft) },
    ]);
    expect(foldDraft('e2', store.events('e2')).items).toHaveLength(1);
    expect(store.soundElsewhere('e2')).toEqual([{ journal: 'e1', at: [5, 6] }]);
    expect(store.soundElsewhere('e1')).toEqual([]);
    confirm(store, 'e2');
    expect(store.search({ words: 'zanzibar', limit: 10 })).toMatchObject([{ exam: 'e2', sound: 'e1', audio: true }]);
    store.eraseSound('e1');
    expect(store.search({ words: 'zanzibar', limit: 10 })).toMatchObject([{ audio: false }]);
    expect(store.soundElsewhere('e2')).toEqual([]);
    store.eraseExam('e2', when);
    expect(bytes()).not.toMatch(/zanzibar/);
    const left = foldDraft('e1', store.events('e1'));
    expect(left.items.map((i) => i.item.id)).toEqual(['e1:0.0']);
    expect(left.gaps).toEqual([{ at: [5, 6], why: 'erased' }]);
  });
});

describe('trouble', () => {
  test('a full disk is said plainly and nothing is half saved', () => {
    store.createExam('e1', header(), by, when);
    store.close();
    const db = raw();
    db.pragma('wal_checkpoint(TRUNCATE)');
    db.close();
    store = openStore(join(dir, 'data'), { maxPages: statSync(join(dir, 'data', 'records.sqlite')).size / 4096 + 2 });
    const long = 'hook '.repeat(20_000).trim();
    expect(code(() => add(store, 'e1', said('e1:0', 'one'), said('e1:1', long)))).toBe('disk-full');
    expect(store.events('e1')).toHaveLength(1);
    add(store, 'e1', said('e1:0', 'one'));
    expect(store.events('e1')).toHaveLength(2);
  });
  test('a backup is a whole store of its own, for its owner only; it overwrites nothing', async () => {
    confirmedExam(store, 'e1', 'Juniper', when, said('e1:0', 'one oh six hook', { items: [hook('106')] }));
    const file = join(dir, 'copy', 'records.sqlite');
    openStore(join(dir, 'copy')).close();
    await expect(store.backup(file)).rejects.toMatchObject({ code: 'exists' });
    rmSync(file);
    await store.backup(file);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const copy = openStore(join(dir, 'copy'));
    expect(copy.search({ words: 'hook', limit: 10 })).toHaveLength(1);
    copy.close();
  });
  test('unknown exams are said to be so', () => {
    expect(code(() => store.events('nobody'))).toBe('missing');
    store.createExam('e1', header(), by, when);
    expect(code(() => store.createExam('e1', header(), by, when))).toBe('exists');
  });
});
