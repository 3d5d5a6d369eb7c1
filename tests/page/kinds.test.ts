/** Every kind of question is settled by one key, and by one tap, in a real browser against the real program. */
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { doubtKinds } from '../../parser/contract/doubt.ts';
import { openScene, type Scene } from './check.scene.ts';

const phrases = [
  'grey gelding',
  'one twelve hook',
  'mobility grade five four ten',
  'left nine hook',
  'there is a hook',
  'cap on one oh seven',
  'extracted one oh five',
  'wolf teeth with the vet',
  'detomidine point three',
  'two oh six hook',
  'two oh six normal',
  'three oh six',
];
/** What the grammar raises only of sound: hearing, its doubts of itself, and a second reader. */
const asked = [
  { doubt: 'unread', words: 'grey' },
  { doubt: 'unheard', words: '' },
  { doubt: 'unsure', words: 'gelding' },
  {
    doubt: 'readers-differ',
    words: 'grey gelding',
    readings: [
      { label: 'grey gelding', items: [] },
      { label: 'bay gelding', items: [] },
    ],
  },
] as const;
let scene: Scene;
beforeAll(async () => {
  scene = await openScene(
    ['key', 'tap'].map((id) => ({
      id,
      horse: `Juniper by ${id}`,
      startedAt: '2026-03-04T09:12:00+00:00',
      phrases,
      asked: asked.map((doubt) => ({
        ...doubt,
        readings: 'readings' in doubt ? [...doubt.readings].map((reading) => ({ ...reading, items: [] })) : undefined,
      })),
    })),
  );
}, 180_000);
afterEach(() => scene?.clear());
afterAll(() => scene?.close());

const open = async (id: string, draft: (id: string) => ReturnType<Awaited<ReturnType<Scene['tab']>>['draft']>): Promise<string[]> =>
  (await draft(id)).doubts.filter(({ doubt, settled }) => !settled && doubt.state === 'open').map(({ doubt }) => doubt.doubt);

test.each([
  ['key', 'laptop'],
  ['tap', 'phone'],
] as const)('by one %s, on a %s', async (how, screen) => {
  const { page, draft, complaints } = await scene.tab(
    `#/check/${how}`,
    screen === 'phone' ? { viewport: { width: 390, height: 844 }, hasTouch: true } : {},
  );
  await page.locator('.question').first().waitFor();
  expect(new Set(await open(how, draft))).toEqual(new Set(doubtKinds));
  let left = await page.locator('.question').count();
  for (let n = 0; left > 0; n += 1) {
    if (how === 'key') {
      // The first is reached by a key as well; after an answer the next one stands in its place.
      if (n === 0) await page.keyboard.press('j');
      await page.keyboard.press(n % 2 ? 'y' : 's');
    } else
      await page
        .locator('.question')
        .first()
        .getByRole('button', { name: n % 2 ? /^(Keep as said|It was only talk|Right as it is now)$/ : 'Strike' })
        .tap();
    // One at least: what is struck takes every question about it along.
    await expect.poll(() => page.locator('.question').count(), { timeout: 20_000 }).toBeLessThan(left);
    left = await page.locator('.question').count();
  }
  expect(await open(how, draft)).toEqual([]);
  expect(await page.getByRole('button', { name: 'Confirm this record' }).getAttribute('aria-disabled')).not.toBe('true');
  expect(complaints).toEqual([]);
});
