/** A real program with seeded exams, a real browser, and a way to ask the program how things stand. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { Draft } from '../../parser/contract/draft.ts';
import { dictate, type Dictated } from './book.seed.ts';
import { launch } from './browser.ts';
import { startProgram, type Program } from './program.ts';

export interface Scene {
  readonly program: Program;
  readonly browser: Browser;
  /** A tab that is signed in, at a place of the page. Anything the page complains of fails the test that asks `complaints`. */
  readonly tab: (place: string, options?: BrowserContextOptions) => Promise<Tab>;
  /** Closes every tab. */
  readonly clear: () => Promise<void>;
  readonly close: () => Promise<void>;
}
export interface Tab {
  readonly page: Page;
  readonly complaints: readonly string[];
  readonly draft: (id: string) => Promise<Draft>;
  readonly ask: (path: string, method?: string, body?: unknown) => Promise<{ status: number; body: unknown }>;
}

export async function openScene(exams: readonly Dictated[]): Promise<Scene> {
  const folder = await mkdtemp(join(tmpdir(), 'quidnote-scene-'));
  for (const exam of exams) await dictate(folder, exam);
  const program = await startProgram(folder);
  const browser = await launch();
  return {
    program,
    browser,
    tab: async (place, options = {}) => {
      const context = await browser.newContext({
        viewport: { width: 1366, height: 768 },
        reducedMotion: 'reduce',
        locale: 'en-GB',
        ...options,
      });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      page.on('pageerror', (error) => complaints.push(String(error.stack)));
      await page.goto(program.address);
      await page.evaluate((hash) => {
        location.hash = hash;
      }, place);
      await page.locator('h1').first().waitFor();
      const ask: Tab['ask'] = (path, method = 'GET', body) =>
        page.evaluate(
          async ([p, m, b]) => {
            const answer = await fetch(p, {
              method: m,
              ...(b === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(b) }),
            });
            const text = await answer.text();
            return {
              status: answer.status,
              body: (answer.headers.get('content-type') ?? '').includes('json') ? (JSON.parse(text) as unknown) : text,
            };
          },
          [path, method, body] as const,
        );
      return { page, complaints, ask, draft: async (id) => ((await ask(`/api/exams/${id}`)).body as { draft: Draft }).draft };
    },
    clear: async () => {
      await Promise.all(browser.contexts().map((context) => context.close()));
    },
    close: async () => {
      await browser.close();
      await program.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
