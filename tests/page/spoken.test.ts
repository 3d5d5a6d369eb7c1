/** An exam by voice alone, on a phone: struck, brought back, a question answered, another horse and back, paused, finished; then split and joined by thumb. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Draft } from '../../parser/contract/draft.ts';
import { launch, screens } from './browser.ts';
import { openSpoken, type Spoken } from './spoken.ts';

let folder: string, browser: Browser | undefined, spoken: Spoken | undefined;
beforeAll(async () => {
  await build({ logLevel: 'error' });
});
afterEach(async () => {
  await browser?.close();
  await spoken?.close();
  await rm(folder, { recursive: true, force: true });
});
afterAll(() => browser?.close());

/** Keeps all that the screen said, in order: an answer stands only until the next phrase. */
const watch = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    const look = (): void =>
      document.querySelectorAll('.live-state, .live-answer, .live-became li, .live-ask .answers, .whose b').forEach((element) => {
        const text = `${[...element.classList].join(' ') || element.tagName.toLowerCase()}: ${(element as HTMLElement).innerText.replace(/\s+/g, ' ').trim()}`;
        if (seen.findLast((line) => line.startsWith(text.split(':')[0]!)) !== text) seen.push(text);
      });
    new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
  });
const seen = (page: Page): Promise<string[]> => page.evaluate(() => (window as unknown as { seen: string[] }).seen);
const draftOf = (page: Page, id: string): Promise<Draft> =>
  page.evaluate(async (exam) => ((await (await fetch(`/api/exams/${exam}`)).json()) as { draft: Draft }).draft, id);
const standing = ({ items }: Draft): string[] =>
  items
    .filter(({ state }) => state === 'open' || state === 'kept')
    .map(({ item }) =>
      'place' in item && item.place && 'teeth' in item.place
        ? `${item.place.teeth.join()} ${'condition' in item ? item.condition : item.kind}`
        : item.kind,
    );

async function listen(lines: readonly string[], screen: keyof typeof screens): Promise<Page> {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-spoken-'));
  spoken = await openSpoken(folder, lines);
  browser = await launch(spoken.microphone);
  const page = await (await browser.newContext({ viewport: screens[screen], hasTouch: screen !== 'laptop' })).newPage();
  page.setDefaultTimeout(150_000);
  await watch(page);
  await page.goto(spoken.address);
  await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Listening' }).click();
  await page.getByLabel('Which horse?').fill('Juniper');
  await page.getByRole('button', { name: 'Start listening' }).click();
  await page.locator('.live.running').waitFor();
  return page;
}
const idIn = (page: Page): string => new URL(page.url()).hash.split('/').at(-1)!;

test.each(['phone', 'laptop'] as const)('by voice on a %s: nothing that was misheard is lost', { timeout: 300_000 }, async (screen) => {
  const page = await listen(
    [
      'one oh six hook front four millimetres',
      'scratch that',
      'bring that back',
      'left nine hook',
      'three oh nine',
      'what is left',
      'next horse teasel',
      'two oh seven ramp',
      'bring that back',
      'stop listening',
      'one ten wave',
      'start listening',
      'read it all',
      'finish exam',
    ],
    screen,
  );
  // "Finish exam" leads to looking over.
  await page.locator('.check h1').waitFor();
  const told = await seen(page);
  const order = [
    /^live-answer: Struck\. .*106|^live-answer: Struck\. .*[Oo]ne oh six/,
    /^live-answer: Brought back\./,
    /^answers: 209.*309/,
    /^live-answer: Not looked at yet: /,
    /^live-answer: Next horse: Teasel\./,
    /^live-answer: Back to Juniper\./,
    /^live-state: Paused/,
    /^live-answer: Listening\./,
    /^live-answer: .*[Tt]hree oh nine/,
  ];
  let at = -1;
  for (const sign of order) {
    const next = told.findIndex((line, i) => i > at && sign.test(line));
    expect(next, `${sign} behind ${told[at] ?? 'the start'} in\n${told.join('\n')}`).toBeGreaterThan(at);
    at = next;
  }
  const juniper = idIn(page);
  const draft = await draftOf(page, juniper);
  expect(draft.header.horse?.name).toBe('Juniper');
  expect(standing(draft)).toEqual(['106 hook', '309 hook', '207 ramp']);
  expect(draft.utterances.some(({ text }) => text === 'one ten wave')).toBe(false);
  expect(draft.gaps.map(({ why }) => why)).toContain('pause');
  expect(draft.doubts.filter(({ doubt, settled }) => !settled && doubt.state === 'open')).toEqual([]);

  // Another horse was begun without saying so: split there, and joined again.
  await page.getByText(/All that was said/).click();
  await page.locator('.all-said li', { hasText: 'two oh seven ramp' }).getByRole('button', { name: 'Another horse from here' }).click();
  await page.getByRole('button', { name: 'Yes, split here' }).click();
  await page.waitForURL((url) => !url.hash.endsWith(juniper));
  const other = idIn(page);
  expect(standing(await draftOf(page, other))).toEqual(['207 ramp']);
  expect(standing(await draftOf(page, juniper))).toEqual(['106 hook', '309 hook']);
  await page.goto(page.url().replace(other, juniper));
  await page.getByRole('heading', { name: 'Juniper' }).waitFor();
  await page.getByRole('button', { name: 'Join with another draft' }).click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /No name yet.*1 item/ })
    .click();
  await expect.poll(async () => standing(await draftOf(page, juniper)), { timeout: 60_000 }).toEqual(['106 hook', '309 hook', '207 ramp']);
});

test('it answers by voice and by tone, keeps the screen awake, and tells the program what it says', { timeout: 300_000 }, async () => {
  const lines = ['one oh six hook', 'left nine hook', 'the second one', 'what is left', 'finish exam'];
  folder = await mkdtemp(join(tmpdir(), 'quidnote-spoken-'));
  spoken = await openSpoken(folder, lines);
  browser = await launch(spoken.microphone);
  const page = await (await browser.newContext({ viewport: screens.tablet })).newPage();
  page.setDefaultTimeout(150_000);
  const sent: string[] = [];
  page.on('websocket', (socket) =>
    socket.on('framesent', ({ payload }) => {
      if (typeof payload === 'string') sent.push(payload);
    }),
  );
  // Debian's chromium brings no voices: in place of a loudspeaker a list, to which a sentence takes a moment. Tones and the lock are the browser's own, counted.
  await page.addInitScript(() => {
    const kept = { said: [] as string[], tones: 0, awake: 0 };
    const begin = OscillatorNode.prototype.start;
    OscillatorNode.prototype.start = function (...when) {
      kept.tones += 1;
      return begin.apply(this, when);
    };
    const lock = navigator.wakeLock.request.bind(navigator.wakeLock);
    navigator.wakeLock.request = async (kind) => {
      const got = await lock(kind);
      kept.awake += 1;
      return got;
    };
    const voices = [
      { localService: false, lang: 'en-GB', name: 'far away', default: true },
      { localService: true, lang: 'en-GB', name: 'here', default: false },
    ];
    class Sentence {
      onend?: () => void;
      voice?: { name: string };
      constructor(readonly text: string) {}
    }
    Object.assign(window, { kept, SpeechSynthesisUtterance: Sentence });
    Object.defineProperty(window, 'speechSynthesis', {
      value: {
        getVoices: () => voices,
        cancel: () => undefined,
        speak: (sentence: Sentence) => {
          kept.said.push(`${sentence.voice!.name}: ${sentence.text}`);
          setTimeout(() => sentence.onend?.(), 50);
        },
      },
    });
  });
  await page.goto(spoken.address);
  await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Listening' }).click();
  await page.getByRole('button', { name: 'Start listening' }).click();
  await page.locator('.check h1').waitFor();
  const { said, tones, awake } = await page.evaluate(
    () => (window as unknown as { kept: { said: string[]; tones: number; awake: number } }).kept,
  );
  expect(said.every((line) => line.startsWith('here: '))).toBe(true);
  expect(said).toContain('here: two oh nine, or three oh nine?');
  expect(said.find((line) => line.includes('Not looked at yet'))).toBeDefined();
  expect(tones).toBeGreaterThanOrEqual(8);
  expect(awake).toBe(1);
  expect(
    sent.filter((frame) => frame.includes('"said"')).map((frame) => `here: ${(JSON.parse(frame) as { sentence: string }).sentence}`),
  ).toEqual(said);
});
