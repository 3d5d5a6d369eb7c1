/**
 * The demo exam's sound through the real engine and the real way through (`server/app.ts`), against what was written before
 * anything was rendered: words heard beside words spoken, item F1 over the whole exam, every wrong and missing item.
 * Synthetic voices: says nothing about people.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lookAt, openEar, type Understood } from '../../server/app.ts';
import type { Header } from '../../parser/contract/draft.ts';
import { key, pair, sameItem, type Expected } from '../match.ts';
import { align, bareWords } from './hearing/measure.ts';
import { f1, precision, recall } from './tally.ts';

interface Demo {
  readonly sound: string;
  readonly header: Partial<Header>;
  readonly phrases: readonly { readonly say: string; readonly expect: Expected }[];
}

/** @param examsDir where `demo.json` lies; its `sound` counts from the checkout */
export async function demoScore(examsDir: string): Promise<string> {
  const demo = JSON.parse(readFileSync(join(examsDir, 'demo.json'), 'utf8')) as Demo;
  const sound = join(examsDir, '../..', demo.sound);
  if (!existsSync(sound)) return `not measured: ${demo.sound} is not there (fixtures/make/README.md says how it is made)`;
  const heard: Understood[] = [];
  const notices: string[] = [];
  const ear = await openEar();
  try {
    await lookAt(
      sound,
      ear,
      demo.header,
      (one) => heard.push(one),
      (notice) => notices.push(JSON.stringify(notice)),
    );
  } finally {
    await ear.close();
  }
  const wanted = demo.phrases.flatMap(({ expect }) => (Array.isArray(expect.items) ? expect.items : []));
  const made = heard.flatMap(({ result }) => result.items);
  const { pairs, missing, extra } = pair(wanted, made, (e, g) => sameItem(factly(e), g));
  const tally = { right: pairs.length, missing: missing.length, extra: extra.length };
  const words = align(bareWords(demo.phrases.map(({ say }) => say).join(' ')), bareWords(heard.map(({ result }) => result.text).join(' ')));
  return [
    `  ${words.errors} of ${words.words} words wrong (${((100 * words.errors) / words.words).toFixed(1)} %), ${heard.length} phrases heard of ${demo.phrases.length} spoken`,
    `  items: ${tally.right} right, ${tally.missing} missing, ${tally.extra} extra; precision ${precision(tally).toFixed(4)}, recall ${recall(tally).toFixed(4)}, F1 ${f1(tally).toFixed(4)}`,
    `  the horse, as spoken: ${spoken(demo.phrases.map(({ expect }) => expect.header)) === spoken(heard.map(({ result }) => result.header)) ? 'right' : `${spoken(heard.map(({ result }) => result.header))}, not ${spoken(demo.phrases.map(({ expect }) => expect.header))}`}`,
    ...notices.map((n) => `  notice ${n}`),
    '  spoken:',
    ...demo.phrases.map(({ say }) => `    ${say}`),
    '  heard:',
    ...heard.map(
      ({ result }) => `    ${result.text}${result.doubts.length ? `   [${result.doubts.map(({ doubt }) => doubt).join(', ')}]` : ''}`,
    ),
    ...missing.map((item) => `  missing ${key(item)}`),
    ...extra.map((item) => `  extra   ${key(item)}`),
  ].join('\n');
}

/** What was told of the horse in the course of the exam, as one. */
const spoken = (headers: readonly (object | undefined)[]): string =>
  key(headers.reduce<object>((all, header) => ({ ...all, ...(header && 'horse' in header ? (header.horse as object) : {}) }), {}));

/** A fact of the demo names what it is about; its own words are the speaker's and are read above. */
const factly = (item: unknown): unknown =>
  (item as { kind: string }).kind === 'fact' ? { said: '*', value: '*', given: '*', ...(item as object) } : item;
