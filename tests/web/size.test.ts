/** The page stays small: script at most 100 kB gzipped, nothing inlined, nothing fetched from elsewhere. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const out = mkdtempSync(join(tmpdir(), 'quidnote-page-'));
beforeAll(
  () => build({ root: join(root, 'web'), configFile: join(root, 'vite.config.ts'), logLevel: 'error', build: { outDir: out } }),
  120_000,
);
afterAll(() => rmSync(out, { recursive: true, force: true }));
const assets = (end: string): string[] =>
  readdirSync(join(out, 'assets'))
    .filter((name) => name.endsWith(end))
    .map((name) => readFileSync(join(out, 'assets', name), 'utf8'));

test('script, all of it, is at most 100 kB gzipped', () => {
  const scripts = assets('.js');
  expect(scripts.length).toBeGreaterThan(0);
  expect(scripts.reduce((sum, text) => sum + gzipSync(text, { level: 9 }).length, 0)).toBeLessThanOrEqual(100_000);
});
test('no inline script or style, no address of another host', () => {
  const html = readFileSync(join(out, 'index.html'), 'utf8');
  expect(html).not.toMatch(/<style|style=|<script(?![^>]*\bsrc=)[^>]*>|\son\w+=/);
  const hosts = [html, ...assets('.js'), ...assets('.css')].flatMap((text) => [...text.matchAll(/https?:\/\/[\w.-]+/g)].map((m) => m[0]));
  // Names of XML and JSON Schema vocabularies are names, not addresses: nothing fetches them.
  expect(hosts.filter((host) => !/^https?:\/\/(www\.w3\.org|json-schema\.org)$/.test(host))).toEqual([]);
});
test('moods can be chosen for a part of the page: light-dark() is left in the styles', () => {
  expect(assets('.css').join('')).toContain('light-dark(');
});
