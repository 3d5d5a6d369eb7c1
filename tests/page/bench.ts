/**
 * `npm run bench:page`, in a real browser against the real program: until the page can be used, a draft of 500 items, and from the end of a phrase to
 * its words on the screen over the bundled exam.
 *   --seconds N   only the first N seconds of it (otherwise all; 0: no exam)
 * The phrase's end is the program's own (the last sample that held voice); the page notes when its first sample was taken and when words had been painted.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from 'vite';
import type { Draft } from '../../parser/contract/draft.ts';
import { dictate } from './book.seed.ts';
import { launch, screens } from './browser.ts';
import { demoWav } from './demo.ts';
import { at, startProgram } from './program.ts';
import { large, largeDraft, share, untilUsable } from './speed.ts';

const { values } = parseArgs({ options: { seconds: { type: 'string', default: '300' } } });
const wanted = Number(values.seconds);
const folder = await mkdtemp(join(tmpdir(), 'quidnote-bench-'));
await build({ logLevel: 'error' });
await dictate(join(folder, 'data'), large);
const length = await demoWav(join(folder, 'demo.wav'), Math.max(1, wanted));
const program = await startProgram(join(folder, 'data'));
const browser = await launch(join(folder, 'demo.wav'));
try {
  for (const [name, place, button] of [
    ['listening', '#/listen', 'button.start'],
    ['the book', '#/book', '.rows a'],
    ['a draft of 500 items', '#/check/large', 'li.line .head'],
  ] as const) {
    const times = await untilUsable(browser, program.address, place, button, 5);
    process.stdout.write(
      `Opened to usable, ${name}: median ${share(times, 0.5)} ms, slowest ${share(times, 1)} ms (5 loads, nothing cached).\n`,
    );
  }
  const { items, shown, key, frames, kept, picked } = await largeDraft(browser, program.address);
  process.stdout.write(
    `${items} items: on the screen after ${Math.round(shown)} ms; key to paint median ${share(key, 0.5)}, p95 ${share(key, 0.95)} ms; frames of a scroll median ${share(frames, 0.5)}, p95 ${share(frames, 0.95)}, slowest ${share(frames, 1)} ms; one kept ${Math.round(kept)} ms; a place picked ${Math.round(picked)} ms.\n`,
  );
  if (wanted > 0) await exam();
} finally {
  await browser.close();
  await program.stop();
  await rm(folder, { recursive: true, force: true });
}

async function exam(): Promise<void> {
  const page = await (await browser.newContext({ viewport: screens.laptop })).newPage();
  page.setDefaultTimeout(150_000);
  await page.goto(program.address);
  await page.goto(at(program.address, '#/listen'));
  await page.getByRole('button', { name: 'Start listening' }).click();
  const id = (await (await page.waitForFunction(() => localStorage.getItem('quidnote.sitting'))).jsonValue())!;
  const draft = (): Promise<Draft> =>
    page.evaluate(async (exam) => ((await (await fetch(`/api/exams/${exam}`)).json()) as { draft: Draft }).draft, id);
  await page.waitForTimeout((length + 2) * 1000);
  // The exam's last phrase ends a few seconds before its sound does.
  const heardAll = ({ unread, utterances }: Draft): boolean => unread.length === 0 && (utterances.at(-1)?.at?.[1] ?? 0) > length - 8;
  while (!heardAll(await draft())) await page.waitForTimeout(500);
  const { utterances } = await draft();
  const marks = await page.evaluate(() =>
    performance
      .getEntriesByType('mark')
      .map((mark) => ({ name: mark.name, at: mark.startTime, detail: (mark as PerformanceMark).detail as string })),
  );
  // The first mark falls when the first quarter of a second had been taken: the exam's clock began that much earlier.
  const began = marks.find((mark) => mark.name === 'quidnote-sound')!.at - 250;
  const marked = new Map(marks.filter((mark) => mark.name === 'quidnote-shown').map((mark) => [mark.detail, mark.at]));
  const waits = utterances.flatMap((u) => (u.at && marked.has(u.id) ? [marked.get(u.id)! - began - u.at[1] * 1000] : []));
  process.stdout.write(
    `Phrase end to pixels: median ${share(waits, 0.5)} ms, p95 ${share(waits, 0.95)} ms, slowest ${share(waits, 1)} ms (${waits.length} phrases of ${utterances.length} heard in ${Math.round(length)} s of the demo exam).\n`,
  );
}
