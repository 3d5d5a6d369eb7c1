/** The first run: the bundled, invented exam goes the way a voice goes, into a store of its own, and is shown as a table. */
import { createReadStream, existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Item } from '../../parser/contract/item.ts';
import type { FromServer } from '../../parser/contract/wire.ts';
import { say } from '../../parser/index.ts';
import { openApp } from '../app.ts';
import type { Ear } from '../app/ear.ts';
import { line, tell, tableHead, tableRow } from './out.ts';

/** Says that the exam was heard to its end. */
const heardMark = 'demo-heard';
export const isDemoHeard = (dir: string): boolean => existsSync(join(dir, heardMark));

/** @param dir the demonstration's own folder; @param sound the recording */
export async function hearDemo(dir: string, sound: string, ear: Pick<Ear, 'name' | 'segmenter' | 'hear'>): Promise<void> {
  const app = openApp(dir, { ...ear, close: async () => undefined });
  const began = performance.now();
  const took: number[] = [];
  let parts: Extract<FromServer, { type: 'changed' }>['parts'] = {};
  tableHead();
  try {
    const exams = await app.hearFile(
      createReadStream(sound),
      { examiner: 'Demonstration (invented)' },
      (message) => {
        if (message.type === 'changed' && message.parts.utterances) parts = message.parts;
        if (message.type !== 'hearing' || message.tookMs === undefined) return;
        const [utterance] = parts.utterances ?? [];
        if (utterance) {
          took.push(message.tookMs);
          tableRow(utterance.at?.[0] ?? 0, message.tookMs, utterance.text, [
            ...(parts.items ?? []).filter(({ item }) => item.evidence.utterance === utterance.id).map(({ item }) => say(item as Item)),
            ...(parts.commands ?? []).map(({ command }) => `[${command}]`),
            ...(parts.doubts ?? []).filter(({ doubt }) => doubt.utterance === utterance.id).map(({ doubt }) => `? ${doubt.doubt}`),
          ]);
        }
        parts = {};
      },
      (notice) => tell(notice.message),
    );
    const drafts = exams.map((exam) => app.doors.exam(exam).draft);
    // What was taken back is no part of the draft any more: the page counts alike.
    const items = drafts.flatMap((draft) => draft.items.filter(({ state }) => state !== 'struck' && state !== 'revised'));
    const sorted = took.toSorted((a, b) => a - b);
    const ms = (share: number): number => Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0);
    line('');
    line(
      `${took.length} phrases, ${items.length} items, ${sum(drafts.map((d) => d.doubts.length))} questions, in ${Math.round((performance.now() - began) / 1000)} s. A phrase took ${ms(0.5)} ms (median), ${ms(0.95)} ms (95 in 100).`,
    );
    line('This was a demonstration: the voices are synthetic; the horse, the people and the yard are invented.');
    await writeFile(join(dir, heardMark), '', { mode: 0o600 });
  } finally {
    await app.close();
  }
}
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
