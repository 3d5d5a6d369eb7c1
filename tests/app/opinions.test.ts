/** What the second reader may do to a draft: ask, and nothing else. The ear is scripted; grammar, store and draft are the real ones. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { DraftEvent } from '../../parser/contract/draft.ts';
import { openOpinions } from '../../server/app/opinions.ts';
import { noHeader } from '../../server/app/exams.ts';
import { now } from '../../server/app/now.ts';
import { read } from '../../server/app/understand.ts';
import { openStore, type Store } from '../../server/records/index.ts';
import { contextOf } from '../../server/session/context.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { sureOfBoth } from '../../server/session/readers.ts';
import { scriptedEngine } from '../../server/speech/scripted.ts';
import type { HeardPhrase } from '../../parser/contract/word.ts';

let dir: string;
let store: Store;
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'quidnote-opinions-'));
  store = openStore(dir);
  store.createExam('e', noHeader, 'person', now());
});
afterEach(async () => {
  store.close();
  await rm(dir, { recursive: true, force: true });
});

const draft = () => foldDraft('e', store.events('e'));
const append = (events: readonly DraftEvent[]): void => {
  const before = draft();
  store.append('e', events, events.reduce(applyEvent, before));
};
function say(text: string, at: number): string {
  const phrase: HeardPhrase = {
    id: `e:${at}`,
    at: [at, at + 2],
    reader: 'first',
    hypotheses: [{ text, logProb: -1, words: text.split(' ').map((w) => ({ w })) }],
  };
  append([
    { event: 'heard', phrase, when: now() },
    { event: 'said', result: read(phrase, contextOf(draft())), when: now() },
  ]);
  return phrase.id;
}
const open = (lines: readonly string[], trouble: (error: unknown) => void = () => undefined) =>
  openOpinions(scriptedEngine(lines), {
    store,
    read,
    trouble,
    journals: {
      view: async (_exam, look) =>
        look({ length: () => 0, parts: () => [], close: async () => undefined, read: async () => new Float32Array(32_000).fill(0.1) }),
    },
    change: async (_exam, make) => append(make()),
  });

test('a disagreement on the tooth becomes an open question with both readings; the item stands as it was', async () => {
  say('three oh nine hook', 1);
  const before = draft().items;
  const opinions = open(['two oh nine hook']);
  expect(await opinions.whole('e')).toBe(1);
  expect(draft().items.map(({ second: _second, ...item }) => item)).toEqual(before);
  expect(draft().items[0]?.second).toEqual({ heard: 'not-this', text: 'two oh nine hook' });
  expect(draft().doubts.at(-1)?.doubt).toMatchObject({
    doubt: 'readers-differ',
    readings: [{ label: 'three oh nine hook' }, { label: 'two oh nine hook' }],
  });
  await opinions.close();
});

test('what was carried for the first reader is carried for the second: agreement raises nothing', async () => {
  say('one oh six hook', 1);
  say('four mil', 5);
  const opinions = open(['106 hook', '4 mm']);
  expect(await opinions.whole('e')).toBe(0);
  // Both heard it: that is kept beside the item, with what the two together are worth; the item is as it was.
  expect(draft().items.every(({ second }) => second?.heard === 'same')).toBe(true);
  await opinions.close();
});

test('agreement raises belief, and never lowers or invents it', () => {
  for (const sure of [0.05, 0.3, 0.6, 0.9]) expect(sureOfBoth(sure)).toBeGreaterThan(sure);
  expect([sureOfBoth(0), sureOfBoth(1)]).toEqual([0, 1]);
});

test('a confirmed record is not changed: a difference found later is an open question on it', async () => {
  const id = say('one oh six hook', 1);
  const questions = draft().doubts.length;
  const events: DraftEvent[] = [{ event: 'confirmed', lexicon: 'test', by: 'person', when: now() }];
  append(events);
  const items = draft().items;
  const opinions = open(['two oh six hook']);
  opinions.ask('e', id);
  await opinions.idle();
  expect(draft().state).toBe('confirmed');
  expect(draft().items).toEqual(items);
  expect(draft().doubts).toHaveLength(questions + 1);
  await opinions.close();
});

test('a reader that falls at every phrase is told once, and again only after it has read one', async () => {
  const ids = [1, 5, 9, 13].map((at) => say('one oh six hook', at));
  const told: unknown[] = [];
  let asked = 0;
  const engine = scriptedEngine(['one oh six hook']);
  const opinions = openOpinions(
    {
      ...engine,
      hear: (clip, bias) => {
        asked += 1;
        return asked === 3 ? engine.hear(clip, bias) : Promise.reject(new Error('fell'));
      },
    },
    {
      store,
      read,
      trouble: (error) => told.push(error),
      journals: {
        view: async (_exam, look) =>
          look({ length: () => 0, parts: () => [], close: async () => undefined, read: async () => new Float32Array(32_000).fill(0.1) }),
      },
      change: async (_exam, make) => append(make()),
    },
  );
  for (const id of ids.slice(0, 2)) opinions.ask('e', id);
  await opinions.idle();
  expect(told).toHaveLength(1);
  for (const id of ids.slice(2)) opinions.ask('e', id);
  await opinions.idle();
  expect(told).toHaveLength(2);
  await opinions.close();
});

test('a reader that falls is told, and the phrase can be asked again', async () => {
  const id = say('one oh six hook', 1);
  const told: unknown[] = [];
  let fall = true;
  const engine = scriptedEngine(['two oh six hook']);
  const opinions = openOpinions(
    {
      ...engine,
      hear: (clip, bias) => {
        if (fall) {
          fall = false;
          return Promise.reject(new Error('fell'));
        }
        return engine.hear(clip, bias);
      },
    },
    {
      store,
      read,
      trouble: (error) => told.push(error),
      journals: {
        view: async (_exam, look) =>
          look({ length: () => 0, parts: () => [], close: async () => undefined, read: async () => new Float32Array(32_000).fill(0.1) }),
      },
      change: async (_exam, make) => append(make()),
    },
  );
  opinions.ask('e', id);
  await opinions.idle();
  expect(told).toHaveLength(1);
  expect(await opinions.whole('e')).toBe(1);
  await opinions.close();
});
