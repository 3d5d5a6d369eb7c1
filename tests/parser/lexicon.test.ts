/** The lexicon, linted: no form owned by two entries unless said so, every form reads as its own entry, every entry has its gold. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expand } from '../../parser/grammar/template.ts';
import { commandForms } from '../../parser/grammar/vocabulary.ts';
import { labelOf, parseText, emptyContext } from '../../parser/index.ts';
import { commandClosers, commandIds, commandOpeners, commands } from '../../parser/lexicon/commands.ts';
import { conditionIds, conditions } from '../../parser/lexicon/conditions.ts';
import { procedureIds } from '../../parser/lexicon/procedures.ts';
import { regionIds, regions } from '../../parser/lexicon/regions.ts';
import { scaleIds, scales } from '../../parser/lexicon/scales.ts';
import type { ConditionEntry } from '../../parser/lexicon/types.ts';
import { afterStrike, goldRoot } from './corpus.ts';

const formsOf = (entry: ConditionEntry): readonly string[] =>
  [...entry.say, ...(entry.absentSay ?? []), ...(entry.withPlace ?? [])].flatMap((form) => expand(form)).map((words) => words.join(' '));

/** Said of two findings; the rule that tells them apart stands beside each. */
const ambiguous: Readonly<Record<string, string>> = {
  displaced: 'alone a position; beside a fracture how it stands',
};

/** Every template of the lexicon: strings with brackets, wherever they stand. */
const templatesIn = (value: unknown): readonly string[] =>
  typeof value === 'string'
    ? /[([]/.test(value) && !/\\|\(\?|\^/.test(value)
      ? [value]
      : []
    : value !== null && typeof value === 'object' && !(value instanceof RegExp)
      ? Object.values(value).flatMap(templatesIn)
      : [];

test('no template says so much that every start pays for it: all forms are held in memory', async () => {
  const folder = join(import.meta.dirname, '../../parser/lexicon');
  const tables = await Promise.all(readdirSync(folder).map((file) => import(join(folder, file)) as Promise<object>));
  const sizes = tables.flatMap((table) => templatesIn(Object.values(table))).map((form) => [expand(form).length, form] as const);
  expect(sizes.filter(([size]) => size > 50_000)).toEqual([]);
  expect(sizes.reduce((sum, [size]) => sum + size, 0)).toBeLessThan(900_000);
});

describe('conditions', () => {
  test('every spoken form is lower case words and hyphenless', () => {
    expect(
      conditionIds.flatMap((id) =>
        formsOf(conditions[id])
          .filter((form) => !/^[a-z0-9' ]+$/.test(form))
          .map((form) => `${id}: ${form}`),
      ),
    ).toEqual([]);
  });
  test('no form belongs to two conditions', () => {
    const owners = new Map<string, string[]>();
    for (const id of conditionIds) for (const form of new Set(formsOf(conditions[id]))) owners.set(form, [...(owners.get(form) ?? []), id]);
    expect(
      [...owners].filter(([form, ids]) => ids.length > 1 && !(form in ambiguous)).map(([form, ids]) => `${form}: ${ids.join(', ')}`),
    ).toEqual([]);
  });
  test('every form that stands on its own reads as its own condition', { timeout: 600_000 }, () => {
    // Ruled out in the whole mouth nothing else is needed: the form alone decides.
    const wrong = conditionIds.flatMap((id) =>
      (conditions[id] as ConditionEntry).say
        .flatMap((form) => expand(form))
        .map((words) => words.join(' '))
        .filter((form) => {
          const { items, doubts } = parseText('l/1', form, emptyContext());
          const found = [
            ...items.map((item) => (item.kind === 'finding' ? item.condition : item.kind)),
            ...doubts.flatMap(({ condition, readings }) => [
              condition,
              ...(readings ?? []).flatMap(({ items: read }) => read.map((item) => (item.kind === 'finding' ? item.condition : item.kind))),
            ]),
          ];
          return !found.includes(id);
        })
        .map((form) => `${id}: ${form}`),
    );
    expect(wrong).toEqual([]);
  });
  test('each has a label, a gold file, and in it a case that is there and one that is ruled out', () => {
    const bare = conditionIds.filter((id) => {
      const file = join(goldRoot, 'conditions', `${id}.json`);
      return labelOf(id) === '' || !existsSync(file) || !readFileSync(file, 'utf8').includes(`"${id}"`);
    });
    expect(bare).toEqual([]);
  });
  test('a scale that a condition names exists, with its source', () => {
    expect(
      conditionIds.filter((id) => {
        const { scale } = conditions[id] as ConditionEntry;
        return scale !== undefined && !(scale in scales);
      }),
    ).toEqual([]);
    expect(scaleIds.filter((id) => scales[id].source.length < 5 || scales[id].values.length < 3)).toEqual([]);
  });
});

describe('the other tables', () => {
  test('every region is read from each of its forms', () => {
    const wrong = regionIds.flatMap((id) =>
      regions[id].say
        .flatMap((form) => expand(form))
        .map((words) => words.join(' '))
        .filter((form) => {
          const { items } = parseText('l/1', `${form} normal`, emptyContext());
          return !items.some(
            (item) =>
              item.kind === 'finding' &&
              item.place !== null &&
              (('region' in item.place && item.place.region === id) ||
                ('rows' in item.place && ['incisors', 'cheek-teeth'].includes(id)) ||
                ('teeth' in item.place && ['incisors', 'cheek-teeth'].includes(id))),
          );
        })
        .map((form) => `${id}: ${form}`),
    );
    expect(wrong).toEqual([]);
  });
  test('every command is heard from each of its forms, and what takes something away takes two words or more', () => {
    for (const [words, id] of commandForms) {
      if (['amend', 'answer', 'note'].includes(id)) continue;
      const form = words.join(' ');
      expect([form, parseText('l/1', form, afterStrike).commands.map(({ command }) => command)]).toEqual([form, [id]]);
    }
    // A pause takes nothing away that was said, is told at once and is ended by a word: people say "pause", and no more.
    const takes = ['strike-last', 'bring-back', 'next-horse', 'finish'];
    expect(
      commandIds
        .filter((id) => takes.includes(id))
        .flatMap((id) => commands[id].say.flatMap((form) => expand(form)).filter((words) => words.length < 2)),
    ).toEqual([]);
  });
  test('what is said around a command changes nothing', () => {
    const steering = [
      'scratch that one',
      'put that one back',
      'read that back',
      'pause the recording',
      'next horse bramble',
      'finish the exam',
    ];
    for (const core of steering)
      for (const [opener, closer] of [
        ...commandOpeners.map((form) => [form, ''] as const),
        ...commandClosers.map((form) => ['', form] as const),
      ])
        for (const before of expand(opener))
          for (const behind of expand(closer)) {
            const meant = ({ commands: all }: ReturnType<typeof parseText>): unknown => all.map(({ command, name }) => [command, name]);
            const said = [...before, core, ...behind].join(' ');
            expect([said, meant(parseText('l/1', said, afterStrike))]).toEqual([said, meant(parseText('l/1', core, afterStrike))]);
          }
  });
  test('every procedure and region has a label of its own', () => {
    const labels = [...procedureIds, ...regionIds].map(labelOf);
    expect(labels.filter((label, i) => labels.indexOf(label) !== i)).toEqual([]);
  });
});
