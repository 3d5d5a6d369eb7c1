/** How quick the page is, measured in the browser by its own clock: until it can be used, and with a draft of 500 items. */
import type { Browser, Page } from 'playwright-core';
import type { Dictated } from './book.seed.ts';
import { screens } from './browser.ts';
import { at } from './program.ts';

const sorted = (values: readonly number[]): readonly number[] => [...values].sort((a, b) => a - b);
/** The value below which a share `p` of them lies. */
export const share = (values: readonly number[], p: number): number =>
  Math.round(sorted(values)[Math.min(values.length - 1, Math.floor(p * values.length))]!);

/** Three findings a phrase. */
export const large: Dictated = {
  id: 'large',
  horse: 'Juniper',
  startedAt: '2026-03-04T09:12:00+00:00',
  phrases: Array.from({ length: 167 }, () => 'three oh nine three ten valve diastema packed five mil pocket'),
};

/** Milliseconds from opening the address to a button that can be pressed and has been painted. Every load in a new profile: nothing is in any cache. */
export async function untilUsable(
  browser: Browser,
  address: string,
  place: string,
  button: string,
  loads: number,
): Promise<readonly number[]> {
  const times: number[] = [];
  for (let n = 0; n < loads; n += 1) {
    const context = await browser.newContext({ viewport: screens.laptop });
    const page = await context.newPage();
    // As text: tsx would put a helper of its own into a function.
    await page.addInitScript({
      content: `(function look() {
      if (!document.querySelector(${JSON.stringify(button)})) return requestAnimationFrame(look);
      requestAnimationFrame(() => setTimeout(() => performance.mark('usable'), 0));
    })()`,
    });
    // Signs in, as the first visit does; the load that is timed is the one after it, with the cookie and without a cache.
    await page.goto(address);
    await page.goto('about:blank');
    await page.goto(at(new URL('/', address).href, place));
    await page.waitForFunction(() => performance.getEntriesByName('usable').length > 0);
    times.push(await page.evaluate(() => performance.getEntriesByName('usable')[0]!.startTime));
    await context.close();
  }
  return times;
}

export interface Smooth {
  readonly items: number;
  readonly shown: number;
  readonly key: readonly number[];
  readonly frames: readonly number[];
  readonly kept: number;
  readonly picked: number;
}

/** On the check screen of a large draft: until it is painted, from a key to its paint, the frames of a scroll, from keeping a line to its paint (over the server), from a touched tooth to its list. */
export async function largeDraft(browser: Browser, address: string): Promise<Smooth> {
  const page = await (await browser.newContext({ viewport: screens.laptop })).newPage();
  page.setDefaultTimeout(120_000);
  await page.goto(address);
  const begun = await page.evaluate(() => {
    const now = performance.now();
    location.hash = '#/check/large';
    return now;
  });
  await page.locator('li.line').nth(400).waitFor();
  const shown =
    (await page.evaluate(() => new Promise<number>((done) => requestAnimationFrame(() => setTimeout(() => done(performance.now()), 0))))) -
    begun;
  const items = await page.locator('li.line').count();
  const key = await page.evaluate(async () => {
    const times: number[] = [];
    for (let n = 0; n < 60; n += 1) {
      const from = performance.now();
      document.activeElement!.dispatchEvent(new KeyboardEvent('keydown', { key: 'j', bubbles: true, cancelable: true }));
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
      times.push(performance.now() - from);
    }
    return times;
  });
  const frames = await page.evaluate(async () => {
    const times: number[] = [];
    let before = await new Promise<number>((done) => requestAnimationFrame(done));
    for (let n = 0; n < 120; n += 1) {
      scrollBy(0, 120);
      const now = await new Promise<number>((done) => requestAnimationFrame(done));
      times.push(now - before);
      before = now;
    }
    return times;
  });
  const kept = await timed(
    page,
    () => {
      document.querySelector<HTMLElement>('li.line .head')!.focus();
      document.activeElement!.dispatchEvent(new KeyboardEvent('keydown', { key: 'y', bubbles: true, cancelable: true }));
    },
    'li.line.is-kept',
  );
  const picked = await timed(
    page,
    () => {
      document.querySelector('[data-key="309-310"]')!.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    },
    '.picked-head',
  );
  await page.context().close();
  return { items, shown, key, frames, kept, picked };
}
/** From an act to the paint in which its sign stands. */
const timed = async (page: Page, act: () => void, sign: string): Promise<number> => {
  const from = await page.evaluate(() => performance.now());
  await page.evaluate(act);
  return page.evaluate(
    async ([selector, since]) => {
      while (!document.querySelector(selector)) await new Promise((done) => requestAnimationFrame(done));
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
      return performance.now() - since;
    },
    [sign, from] as const,
  );
};
