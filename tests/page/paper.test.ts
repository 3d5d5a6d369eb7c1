/** The printed pages in a real browser: one A4 sheet each. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exportExam, ownerPage, paperStyle, vetLetter } from '../../server/report/index.ts';
import { coverageOf, leftParts } from '../../server/session/coverage.ts';
import { launch } from './browser.ts';
import { sampleDraft } from './check.sample.ts';

test('an exam of usual length is one A4 sheet each, and asks for nothing but its style sheet', async () => {
  const dir = mkdtempSync(join(tmpdir(), 'quidnote-paper-'));
  const draft = sampleDraft(undefined, 'confirmed');
  writeFileSync(join(dir, 'paper.css'), paperStyle);
  const browser = await launch();
  for (const [name, made] of [
    ['owner', ownerPage],
    ['vet', vetLetter],
  ] as const) {
    const file = join(dir, `${name}.html`);
    writeFileSync(file, made(exportExam(draft), { draft: false, style: 'paper.css', left: leftParts(coverageOf(draft)) }));
    const page = await browser.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url().split('/').at(-1)!));
    await page.goto(`file://${file}`);
    expect(asked).toEqual([`${name}.html`, 'paper.css']);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), name).toHaveLength(1);
    const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
    // ISO 216: A4 is 210 mm by 297 mm; a point is 25.4/72 mm.
    expect([Math.round((Number(width) * 25.4) / 72), Math.round((Number(height) * 25.4) / 72)]).toEqual([210, 297]);
    await page.close();
  }
  await browser.close();
  rmSync(dir, { recursive: true, force: true });
});
