import { describe, expect, test } from 'vitest';
import type { Draft, DraftEvent, ParseResult } from '../../parser/contract/draft.ts';
import type { FromServer } from '../../parser/contract/wire.ts';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import { openLive, type Live } from '../../server/session/live.ts';
import { foldDraft } from '../../server/session/reduce.ts';
import { coverageOf, leftInWords } from '../../server/session/coverage.ts';
import { by, finding, hook, opened, result, said, when, type Made } from './made.ts';

/** What each phrase reads as: written by hand, so that the session is checked without the grammar. */
const readings: Readonly<Record<string, Made>> = {
  'one oh six hook': { items: [hook('106')] },
  'two oh six hook': { items: [hook('206')] },
  'scratch that': { commands: [{ command: 'strike-last' }] },
  'bring that back': { commands: [{ command: 'bring-back' }] },
  'next horse teasel': { commands: [{ command: 'next-horse', name: 'Teasel' }] },
  'read it all': { commands: [{ command: 'read-all' }] },
  'what is left': { commands: [{ command: 'what-is-left' }] },
  'stop listening': { commands: [{ command: 'pause' }] },
  'start listening': { commands: [{ command: 'resume' }] },
  'flag that for the vet': { commands: [{ command: 'flag-for-veterinarian' }] },
};
interface Room {
  readonly live: Live;
  readonly told: FromServer[];
  readonly disk: Map<string, DraftEvent[]>;
  readonly say: (text: string, ownVoice?: string[], inside?: boolean) => Promise<void>;
  full: boolean;
  readonly answers: () => string[];
}
function room(disk = new Map<string, DraftEvent[]>([['e1', [opened()]]]), exam = 'e1'): Room {
  const told: FromServer[] = [];
  let n = 0;
  const self = { full: false } as { full: boolean };
  const live = openLive(
    {
      read: (phrase): ParseResult => {
        const text = phrase.hypotheses[0]?.text ?? '';
        if (text === 'break') throw new Error('no');
        return result(phrase.id, text, readings[text], phrase.at as [number, number]);
      },
      append: (changes) => {
        if (self.full) throw new Error('disk full');
        for (const { exam, events, draft } of changes) {
          disk.set(exam, [...(disk.get(exam) ?? []), ...events]);
          expect(foldDraft(exam, disk.get(exam)!)).toEqual(draft);
        }
      },
      load: (exam) => foldDraft(exam, disk.get(exam)!),
      publish: (message) => told.push(message),
      now: () => when,
      freshId: () => `e${disk.size + 1}`,
      tick: () => n,
      say: (item) => ('place' in item && item.place && 'teeth' in item.place ? `${item.place.teeth[0]}, hook.` : 'Item.'),
      trouble: () => ({ code: 'not-read', message: 'It could not be read.' }),
    },
    foldDraft(exam, disk.get(exam)!),
  );
  const phrase = (text: string): HeardPhrase => {
    n += 10;
    return {
      id: `${live.draft().id}:${n}`,
      at: [n, n + 1],
      reader: 'first',
      hypotheses: [{ text, logProb: -1, words: text.split(' ').map((w) => ({ w })) }],
    };
  };
  return Object.assign(self, {
    live,
    told,
    disk,
    say: (text: string, ownVoice?: string[], inside = false) => {
      const p = phrase(text);
      return live.phrase(() => Promise.resolve(p), { at: p.at, ...(ownVoice && { ownVoice: { spoken: ownVoice, inside } }) });
    },
    answers: () => told.flatMap((m) => (m.type === 'answer' ? [m.say] : [])),
  });
}
const standing = (draft: Draft): string[] => draft.items.filter((i) => i.state === 'open' || i.state === 'kept').map((i) => i.item.id);

describe('the live session', () => {
  test('a phrase is on disk before it is told, and the page is told only what changed', async () => {
    const r = room();
    await r.say('one oh six hook');
    expect(r.disk.get('e1')!.map((e) => e.event)).toEqual(['opened', 'heard', 'said']);
    const changed = r.told.flatMap((m) => (m.type === 'changed' && m.parts.items ? [m] : []));
    expect(changed).toMatchObject([{ exam: 'e1', parts: { items: [{ item: { id: 'e1:10.0' } }], utterances: [{ id: 'e1:10' }] } }]);
    expect(r.live.draft().unread).toEqual([]);
    expect(r.told.filter((m) => m.type === 'changed').at(-1)).toMatchObject({ parts: { unread: [] } });
  });
  test('commands are answered by name', async () => {
    const r = room();
    for (const text of [
      'one oh six hook',
      'two oh six hook',
      'scratch that',
      'bring that back',
      'read it all',
      'flag that for the vet',
      'scratch that',
      'scratch that',
      'scratch that',
    ])
      await r.say(text);
    expect(r.answers()).toEqual([
      'Struck. 206, hook.',
      'Brought back. 206, hook.',
      '106, hook. 206, hook.',
      'Marked for the vet. 206, hook.',
      'Struck. 206, hook.',
      'Struck. 106, hook.',
      'There is nothing to strike.',
    ]);
  });
  test('phrases are read in the order they were spoken, whatever the ear takes', async () => {
    const r = room();
    const order: string[] = [];
    const slow = (id: string, ms: number) =>
      r.live.phrase(async () => {
        await new Promise((done) => setTimeout(done, ms));
        order.push(id);
        return { id, reader: 'first' as const, hypotheses: [] };
      });
    await Promise.all([slow('e1:1', 20), slow('e1:2', 1), slow('e1:3', 0)]);
    expect(order).toEqual(['e1:1', 'e1:2', 'e1:3']);
    expect(r.live.draft().utterances.map((u) => u.id)).toEqual(order);
  });
  test('next horse opens another draft; one phrase undoes it and nothing that was said meanwhile is lost', async () => {
    const r = room();
    for (const text of ['one oh six hook', 'next horse teasel', 'two oh six hook']) await r.say(text);
    expect(r.live.draft()).toMatchObject({ id: 'e2', header: { horse: { name: 'Teasel' }, yard: 'Low Meadow' } });
    expect(r.answers()).toEqual(['Next horse: Teasel.']);
    await r.say('bring that back');
    expect(r.answers().at(-1)).toBe('Back to Juniper.');
    expect(r.live.draft().id).toBe('e1');
    expect(standing(r.live.draft())).toEqual(['e1:10.0', 'e2:30.0']);
    expect(r.live.draft().utterances.find((u) => u.id === 'e2:30')?.sound).toBe('e2');
    expect(foldDraft('e2', r.disk.get('e2')!)).toMatchObject({ items: [], header: { horse: null } });
    expect(r.live.exams()).toEqual(['e1', 'e2']);
  });
  test('a change of horse is undone by one phrase also after the program was started anew, and only once', async () => {
    const first = room();
    for (const text of ['one oh six hook', 'next horse teasel', 'two oh six hook']) await first.say(text);
    const anew = room(first.disk, 'e2');
    await anew.say('bring that back');
    expect(anew.answers()).toEqual(['Back to Juniper.']);
    expect(standing(anew.live.draft())).toEqual(['e1:10.0', 'e2:30.0']);
    await anew.say('bring that back');
    expect(anew.answers().at(-1)).toBe('There is nothing to bring back.');
    expect(foldDraft('e2', anew.disk.get('e2')!).follows).toBeUndefined();
  });
  test('a horse that was erased meanwhile is told of; the exam goes on as it is', async () => {
    const r = room();
    for (const text of ['one oh six hook', 'next horse teasel', 'two oh six hook']) await r.say(text);
    r.disk.delete('e1');
    await r.say('bring that back');
    expect(r.told.filter((m) => m.type === 'trouble')).toHaveLength(1);
    expect(standing(r.live.draft())).toEqual(['e2:30.0']);
    expect(r.live.draft().unread).toEqual([]);
  });
  test('a horse that was confirmed meanwhile takes nothing in', async () => {
    const r = room();
    for (const text of ['one oh six hook', 'next horse teasel', 'two oh six hook']) await r.say(text);
    r.disk.get('e1')!.push({ event: 'confirmed', lexicon: '1', by, when });
    await r.say('bring that back');
    expect(r.answers().at(-1)).toBe('Juniper is confirmed already, so nothing was changed.');
    expect(r.live.draft().id).toBe('e2');
    expect(standing(r.live.draft())).toEqual(['e2:30.0']);
  });
  test('while paused nothing is kept but the word to go on', async () => {
    const r = room();
    for (const text of ['stop listening', 'one oh six hook']) await r.say(text);
    expect(r.disk.get('e1')).toHaveLength(3);
    await r.say('start listening');
    await r.say('two oh six hook');
    expect(standing(r.live.draft())).toHaveLength(1);
    expect(r.live.draft().utterances.map((u) => u.text)).toEqual(['stop listening', 'start listening', 'two oh six hook']);
  });
  test('our own voice becomes no item, stays as a marked leftover, and what was said over it is read', async () => {
    const r = room();
    await r.say('one oh six hook', ['One oh six. Hook.']);
    await r.say('marked for the vet two oh six hook', ['Marked for the vet.']);
    expect(r.live.draft().utterances).toMatchObject([
      { text: 'one oh six hook', overOwnVoice: true },
      { text: 'marked for the vet two oh six hook', overOwnVoice: true },
    ]);
    expect(r.live.draft().items.map((i) => i.item)).toMatchObject([{ place: { teeth: ['206'] }, evidence: { words: [4] } }]);
    expect(
      r.live
        .draft()
        .utterances[1]!.words.map((w) => w.as)
        .slice(0, 5),
    ).toEqual(['leftover', 'leftover', 'leftover', 'leftover', expect.stringMatching(/^item:/)]);
  });
  test('what is said inside our own voice is asked about before it counts; a command is obeyed', async () => {
    const r = room();
    await r.say('two oh six hook', ['Marked for the vet.'], true);
    expect(r.live.draft().doubts).toMatchObject([
      { doubt: { doubt: 'unsure', item: r.live.draft().items[0]!.item.id, why: 'It was said while this program was speaking.' } },
    ]);
    expect(r.live.draft().utterances[0]).toMatchObject({ overOwnVoice: true });
    await r.say('scratch that', ['Two oh six. Hook.'], true);
    expect(standing(r.live.draft())).toEqual([]);
    expect(r.live.draft().doubts[0]).toMatchObject({ settled: { how: 'struck' } });
  });
  test('what cannot be read or written is told, stays unread, and the session goes on', async () => {
    const r = room();
    await expect(r.say('break')).rejects.toThrow();
    r.full = true;
    await expect(r.say('one oh six hook')).rejects.toThrow('disk full');
    r.full = false;
    await r.say('two oh six hook');
    expect(r.told.filter((m) => m.type === 'trouble')).toHaveLength(2);
    expect(standing(r.live.draft())).toEqual(['e1:30.0']);
    expect(r.told.flatMap((m) => (m.type === 'changed' && m.parts.unread ? [m.parts.unread] : [])).at(-1)).toEqual([
      [10, 11],
      [20, 21],
    ]);
    expect(foldDraft('e1', r.disk.get('e1')!)).toEqual(r.live.draft());
  });
  test('acts from the check screen take their turn in the same queue', async () => {
    const r = room();
    await Promise.all([
      r.say('one oh six hook'),
      r.live.change((draft) => [{ event: 'kept', ids: draft.items.map((i) => i.item.id), by, when }]),
      r.live.command('strike-last', by),
    ]);
    expect(r.live.draft().items).toMatchObject([{ state: 'struck', was: { state: 'kept' }, by }]);
    await r.live.idle();
  });
});

describe('what is left', () => {
  const draft = (...items: Record<string, unknown>[]): Draft => foldDraft('e1', [opened(), said('e1:0', 'words', { items })]);
  test('a row is its teeth; "no hooks" about nowhere covers nothing; what was said to be unseen is not left', () => {
    const left = coverageOf(
      draft(finding('sharp-enamel-points', { rows: ['upper-right'] }), hook('206'), finding('hook', null, { presence: 'absent' }), {
        kind: 'not-examined',
        place: { region: 'tongue' },
      }),
    );
    expect(left.rows.map((r) => [r.row, r.teeth.length, r.whole])).toEqual([
      ['upper-left', 5, false],
      ['lower-left', 6, true],
      ['lower-right', 6, true],
      ['upper-incisors', 6, true],
      ['lower-incisors', 6, true],
    ]);
    expect(left.regions).not.toContainEqual({ region: 'tongue' });
    expect(leftInWords(left)).toMatch(/^Not looked at yet: upper left, 207, 208, 209, 210 and 211; lower left;/);
  });
  test('"mouth normal" speaks of every row and all inside it, and of nothing outside', () => {
    const left = coverageOf(draft(finding('abnormality', { region: 'mouth' }, { presence: 'absent' })));
    expect(left.rows).toEqual([]);
    expect(left.regions).toEqual([{ region: 'temporomandibular-joint' }, { region: 'masseter' }, { region: 'jaw-movement' }]);
  });
  test('a side that was named is the only one spoken of: of the incisors, of the mouth, of a paired region', () => {
    // Quadrants 1 and 4 are the horse's right (Floyd 1991, the modified Triadan system).
    const incisors = coverageOf(draft(finding('abnormality', { region: 'incisors', side: 'right' }, { presence: 'absent' })));
    expect(incisors.rows.filter(({ row }) => row.endsWith('incisors')).map(({ row, teeth }) => [row, teeth])).toEqual([
      ['upper-incisors', ['201', '202', '203']],
      ['lower-incisors', ['301', '302', '303']],
    ]);
    const mouth = coverageOf(draft(finding('abnormality', { region: 'mouth', side: 'left' }, { presence: 'absent' })));
    expect(mouth.rows.flatMap(({ teeth }) => teeth).every((tooth) => /^[14]/.test(tooth))).toBe(true);
    expect(mouth.regions).toContainEqual({ region: 'cheek', side: 'right' });
    const cheek = coverageOf(draft(finding('ulcer', { region: 'cheek', side: 'right' })));
    expect(cheek.regions).toContainEqual({ region: 'cheek', side: 'left' });
    expect(leftInWords(cheek)).toContain('cheek, left');
  });
});
