/** Looking over, in a real browser against the real program: by keyboard alone, by touch, and what the program then holds. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { openScene, type Scene } from './check.scene.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const phrases = [
  'nine year old gelding',
  'one oh six hook front four millimetres',
  'two ten mobility grade two',
  'mobility grade five four ten',
  'three oh six',
  'no hooks on the lower sixes',
  'mind the gate will you',
  'see him again in six months',
];
const exam = (id: string, horse: string, startedAt = '2026-03-04T09:12:00+00:00') => ({ id, horse, startedAt, phrases });

let scene: Scene;
beforeAll(async () => {
  scene = await openScene(
    ['keys', 'touch', 'open', 'change', 'axe', 'phone', 'apart']
      .map((id, n) => exam(id, `Juniper ${n}`))
      .concat([exam('together', 'Bramble')]),
  );
}, 180_000);
afterEach(() => scene?.clear());
afterAll(() => scene?.close());

/** What axe-core finds wrong, by the rules of WCAG and good practice. */
async function findings(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run());
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
}
const line = (page: Page, words: string) => page.locator('li.line', { hasText: words });

describe('by keyboard alone', () => {
  test('questions are answered, what is sure is kept in one act, and the record is confirmed', async () => {
    const { page, draft, complaints } = await scene.tab('#/check/keys');
    await page.locator('.question').first().waitFor();
    const before = await draft('keys');
    expect(
      before.doubts
        .filter((d) => !d.settled)
        .map((d) => d.doubt.doubt)
        .sort(),
    ).toEqual(['no-condition', 'off-scale']);

    // Not yet: a question is open, so the last step leads to it and nothing is asked of the program.
    await page.keyboard.press('c');
    expect(await page.evaluate(() => document.activeElement?.id)).toMatch(/^line-/);
    expect((await draft('keys')).state).toBe('draft');

    while (await page.locator('.question').count()) {
      const open = await page.locator('.question').count();
      await page.keyboard.press('Escape');
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      await page.locator('.question .head').first().focus();
      await page.keyboard.press('y');
      await expect.poll(() => page.locator('.question').count()).toBe(open - 1);
    }
    await page.keyboard.press('K');
    await expect.poll(async () => (await draft('keys')).items.filter((i) => i.state === 'open').length).toBe(0);

    await page.keyboard.press('c');
    await page.locator('dialog[open] input').waitFor();
    await page.keyboard.press('Tab');
    await page.locator('dialog[open] input').focus();
    await page.keyboard.type('S. Wren');
    await page.keyboard.press('Enter');
    await page.getByText('Confirmed by S. Wren').waitFor();
    const after = await draft('keys');
    expect(after.state).toBe('confirmed');
    expect(after.revisions).toMatchObject([{ revision: 1, by: 'S. Wren' }]);
    expect(after.revisions[0]!.lexicon).toBeTruthy();
    // Nothing spoken disappeared: the talk is still among what was said.
    expect(after.utterances.map((u) => u.text)).toEqual(phrases);
    expect(complaints).toEqual([]);
  });

  test('j and k walk the lines, Enter opens the words, s strikes, u brings back', async () => {
    const { page, draft } = await scene.tab('#/check/open');
    await page.locator('li.line').first().waitFor();
    const first = await page.locator('.question').count();
    for (let i = 0; i <= first; i++) await page.keyboard.press('j');
    const id = await page.evaluate(() => document.activeElement!.id.replace('line-', ''));
    await page.keyboard.press('Enter');
    await page.locator('li.line.unfolded .phrase').waitFor();
    await page.keyboard.press('s');
    await expect.poll(async () => (await draft('open')).items.find((i) => i.item.id === id)?.state).toBe('struck');
    expect(await page.locator('li.line.is-struck').count()).toBe(1);
    expect(await page.locator('li.line.is-struck .sign').count(), 'nothing is shown there any more').toBe(0);
    await page.keyboard.press('u');
    await expect.poll(async () => (await draft('open')).items.find((i) => i.item.id === id)?.state).toBe('open');
  });

  test('arrow keys walk the mouth: a tooth, its neighbour, the gap between; its words open with the focus', async () => {
    const { page } = await scene.tab('#/check/open');
    await page.locator('.mouth [data-key="106"]').waitFor();
    await page.keyboard.press('m');
    await page.locator('.mouth [data-key="106"]').focus();
    await page.locator('.picked-head', { hasText: 'one oh six, upper right, first cheek tooth' }).waitFor();
    expect(await page.locator('li.line').allTextContents()).toEqual([expect.stringContaining('Hook')]);
    await page.keyboard.press('ArrowDown');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-key'))).toBe('107');
    await page.keyboard.press('ArrowRight');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-key'))).toMatch(/^10[67]-10[78]$/);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.picked-head').count()).toBe(0);
  });
});

describe('an item explains itself', () => {
  test('its own words are marked in the phrase, its sound plays, how sure and why are told', async () => {
    const { page, draft } = await scene.tab('#/check/open');
    await line(page, '4 mm high').locator('.head').click();
    const { item } = (await draft('open')).items.find(
      (i) => i.item.kind === 'finding' && i.item.condition === 'hook' && i.item.presence === 'present',
    )!;
    const words = item.evidence.words.map((i) => phrases[1]!.split(' ')[i]);
    expect((await page.locator('li.line.unfolded mark').allTextContents()).join(' ')).toBe(words.join(' '));
    const [sound] = await Promise.all([
      page.waitForResponse((r) => r.url().includes('/sound?')),
      page.locator('li.line.unfolded .play').click(),
    ]);
    expect([sound.status(), sound.headers()['content-type']]).toEqual([200, 'audio/wav']);
    expect((await sound.body()).subarray(0, 4).toString()).toBe('RIFF');
    await page.getByText('How sure').waitFor();
  });
});

describe('by touch', () => {
  test('a question about a grade is answered with a grade of its scale', async () => {
    const { page, draft } = await scene.tab('#/check/touch', { hasTouch: true });
    await page.locator('.question', { hasText: 'Mobility' }).getByRole('button', { name: '3', exact: true }).tap();
    await expect
      .poll(async () =>
        (await draft('touch')).items
          .filter((i) => i.state !== 'revised' && i.item.kind === 'finding' && i.item.condition === 'mobility')
          .map((i) => (i.item as { grade?: { value: string } }).grade?.value)
          .sort(),
      )
      .toEqual(['2', '3']);
    const now = await draft('touch');
    expect(now.doubts.find((d) => d.doubt.doubt === 'off-scale')!.settled).toBeTruthy();
    expect(now.items.find((i) => i.item.revises)!.item.how['grade']).toBe('typed');
  });

  test('a place, a measure and a presence are changed with legal values; what it was stays', async () => {
    const { page, draft } = await scene.tab('#/check/change', { hasTouch: true });
    await line(page, '4 mm high').locator('.head').tap();
    await page.getByRole('button', { name: 'Change', exact: true }).tap();
    const form = page.getByRole('form', { name: 'Change this' });
    await form.getByRole('button', { name: /^106:/ }).tap();
    await form.getByRole('button', { name: /^107:/ }).tap();
    await form.getByLabel('How much', { exact: true }).last().fill('5');
    await form.getByRole('button', { name: 'Suspected' }).tap();
    await form.getByRole('button', { name: 'Put it so' }).tap();
    await line(page, 'Suspected hook').waitFor();
    const { items } = await draft('change');
    const now = items.find((i) => i.item.revises)!;
    expect(now.item).toMatchObject({
      place: { teeth: ['107'] },
      presence: 'suspected',
      measures: [{ what: 'height', value: 5, unit: 'mm' }],
      how: { place: 'typed', measures: 'typed', presence: 'typed' },
    });
    expect(items.find((i) => i.item.id === now.item.revises)!.state).toBe('revised');
  });

  test('an item is added by hand: nothing is filled in, and it says that it was typed', async () => {
    const { page, draft } = await scene.tab('#/check/change', { hasTouch: true });
    await page.getByRole('button', { name: 'Add by hand' }).last().tap();
    const form = page.getByRole('form', { name: 'Add by hand' });
    expect(await form.getByRole('button', { name: 'Add it' }).isDisabled()).toBe(true);
    await form.locator('label.field', { hasText: 'What' }).locator('select').first().selectOption('calculus');
    await form.getByRole('button', { name: 'Found', exact: true }).tap();
    await form.getByRole('button', { name: 'Lower right' }).tap();
    await form.getByRole('button', { name: /^404:/ }).tap();
    await form.getByRole('button', { name: 'Add it' }).tap();
    await line(page, 'Calculus').waitFor();
    const added = (await draft('change')).items.find((i) => i.item.kind === 'finding' && i.item.condition === 'calculus')!;
    expect(added.item).toMatchObject({
      place: { teeth: ['404'] },
      presence: 'present',
      how: { condition: 'typed', presence: 'typed', place: 'typed' },
    });
    expect(added.item.evidence.at).toBeUndefined();
  });

  test('what was not looked at is one tap from "not examined", and is never called normal', async () => {
    const { page, draft } = await scene.tab('#/check/change', { hasTouch: true });
    await page.getByRole('button', { name: 'Tongue: not examined' }).tap();
    await expect
      .poll(async () => (await draft('change')).items.filter((i) => i.item.kind === 'not-examined').map((i) => i.item))
      .toMatchObject([{ kind: 'not-examined', place: { region: 'tongue' } }]);
    await expect.poll(() => page.getByRole('button', { name: 'Tongue: not examined' }).count()).toBe(0);
  });
});

describe('confirming and amending', () => {
  test('the program itself refuses while a question is open, and says which', async () => {
    const { ask } = await scene.tab('#/check/open');
    const refused = await ask('/api/exams/open/confirm', 'POST', { by: 'S. Wren' });
    expect(refused).toMatchObject({ status: 409, body: { doubts: [expect.anything(), expect.anything()] } });
  });
  test('a confirmed record is amended with a reason; the earlier revision can be read', async () => {
    const { page, draft, ask } = await scene.tab('#/check/change');
    for (const { doubt, settled } of (await draft('change')).doubts)
      if (!settled) await ask('/api/exams/change/acts', 'POST', { act: 'settle', doubt: doubt.id, how: 'kept-as-said' });
    await ask('/api/exams/change/confirm', 'POST', { by: 'S. Wren' });
    await page.reload();
    await page.getByRole('button', { name: 'Amend, with a reason' }).click();
    await page.getByLabel('Changed since, because').fill('the vet saw it too');
    await page.locator('dialog[open]').getByLabel('Your name').fill('S. Wren');
    await page.getByRole('button', { name: 'Open it again' }).click();
    await page.getByText('Open again, because the vet saw it too').waitFor();
    await line(page, 'Calculus').locator('.head').click();
    await page.getByRole('button', { name: 'Strike', exact: true }).click();
    await page.getByRole('button', { name: 'Confirm this record' }).click();
    await page.locator('dialog[open]').getByRole('button', { name: 'Confirm', exact: true }).click();
    await page.getByText('Changed since, because the vet saw it too').waitFor();
    expect((await draft('change')).revisions.map((r) => [r.revision, r.reason ?? null])).toEqual([
      [1, null],
      [2, 'the vet saw it too'],
    ]);
    await page.locator('.revisions').getByRole('button', { name: 'Read it' }).first().click();
    await page.locator('.revision', { hasText: 'Calculus' }).waitFor();
  });
});

test('a draft is split at a phrase and joined with another; nothing is lost', async () => {
  const { page, draft } = await scene.tab('#/check/apart');
  await page.getByText('All that was said').click();
  const phrase = page.locator('.all-said li', { hasText: 'no hooks on the lower sixes' });
  await phrase.getByRole('button', { name: 'Another horse from here' }).click();
  await phrase.getByRole('button', { name: 'Yes, split here' }).click();
  await page.waitForFunction(() => !location.hash.endsWith('/apart'));
  const other = decodeURIComponent((await page.evaluate(() => location.hash)).split('/').at(-1)!);
  await expect.poll(async () => [(await draft('apart')).utterances.length, (await draft(other)).utterances.length]).toEqual([5, 3]);
  // Its sound is still that of the first journal.
  await page.locator('li.line').first().locator('.head').click();
  const [sound] = await Promise.all([
    page.waitForResponse((r) => r.url().includes('/sound?')),
    page.locator('li.line.unfolded .play').click(),
  ]);
  expect([new URL(sound.url()).pathname, sound.status()]).toEqual(['/api/exams/apart/sound', 200]);
  await page.getByRole('button', { name: 'Join with another draft' }).click();
  await page
    .locator('dialog[open]')
    .getByRole('button', { name: /Juniper 6/ })
    .click();
  await expect.poll(async () => [(await draft('apart')).utterances.length, (await draft(other)).utterances.length]).toEqual([0, 8]);
});

describe.each(['light', 'dark'] as const)('%s: axe finds nothing wrong', (colorScheme) => {
  test.each([
    ['the draft', async () => undefined],
    [
      'an open line being changed',
      async (page: Page) => {
        await line(page, '4 mm high').locator('.head').click();
        await page.keyboard.press('e');
        await page.locator('.edit').waitFor();
      },
    ],
    [
      'a picked tooth',
      async (page: Page) => {
        await page.locator('[data-key="106"]').focus();
      },
    ],
    [
      'the list of keys',
      async (page: Page) => {
        await page.keyboard.press('?');
        await page.locator('dialog[open]').waitFor();
      },
    ],
    [
      'all that was said',
      async (page: Page) => {
        await page.getByText('All that was said').click();
      },
    ],
  ] as const)('%s', async (_, act) => {
    const { page, complaints } = await scene.tab('#/check/axe', { colorScheme });
    await page.locator('li.line').first().waitFor();
    await act(page);
    expect(await findings(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});

test('on a phone every button is a thumb wide, nothing runs out of the page, and a touched tooth comes near', async () => {
  const { page } = await scene.tab('#/check/phone', { viewport: { width: 390, height: 844 }, hasTouch: true });
  await page.locator('li.line').first().waitFor();
  const small = await page.locator('button:visible, a.button:visible').evaluateAll((all) =>
    all
      .map((e) => ({ words: e.textContent, box: e.getBoundingClientRect() }))
      .filter(({ box }) => box.height < 44 || box.width < 44)
      .map(({ words, box }) => `${words} ${box.width}x${box.height}`),
  );
  expect(small).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  await page.locator('[data-key="108"] .touch').tap();
  await page.locator('.mouth.near').waitFor();
  await page.locator('.picked-head', { hasText: '108' }).waitFor();
  const pitch = await page.evaluate(() => {
    const y = (key: string) => {
      const b = document.querySelector(`[data-key="${key}"] .touch`)!.getBoundingClientRect();
      return b.top + b.height / 2;
    };
    return y('109') - y('108');
  });
  expect(pitch).toBeGreaterThanOrEqual(40);
});
