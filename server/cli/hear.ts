/** `quidnote hear`: recorded files through the ear and the grammar; kept only when asked. */
import type { Ear } from '../app/ear.ts';
import { asRefusal, lookAt, type App, type Understood } from '../app.ts';
import { lineOf } from './lines.ts';
import { exits, json, line, rows, tell, type Exit } from './out.ts';

/** Mean probability of a word of the best text, 0 to 1 (geometric). */
const confidence = ({ phrase }: Understood): number => {
  const [best] = phrase.hypotheses;
  return best && best.words.length ? Math.round(Math.exp(best.logProb / best.words.length) * 1000) / 1000 : 0;
};
const heardOf = (file: string, one: Understood) => ({
  file,
  at: one.phrase.at,
  confidence: confidence(one),
  heard: one.phrase.hypotheses.map(({ text }) => text),
  exam: one.exam,
});

/** Every file is an exam of its own. A file that cannot be read is told, and the next one is heard. */
export async function hearFiles(files: readonly string[], ear: Ear, asJson: boolean): Promise<Exit> {
  let exit: Exit = exits.ok;
  for (const file of files) {
    if (!asJson) line(`${file}`);
    try {
      await lookAt(
        file,
        ear,
        {},
        (one) => (asJson ? json(lineOf(one.result, heardOf(file, one))) : rows(one.result).forEach(line)),
        (notice) => tell(`${file}: ${notice.message}`),
      );
    } catch (error) {
      tell(`${file}: ${told(error)}`);
      exit = exits.failed;
    }
  }
  return exit;
}

/** Into the records, as drafts to be looked over. */
export async function keepFiles(files: readonly string[], app: App, asJson: boolean): Promise<Exit> {
  let exit: Exit = exits.ok;
  for (const file of files) {
    try {
      const exams = await app.hearFile(
        file,
        {},
        () => undefined,
        (notice) => tell(`${file}: ${notice.message}`),
      );
      for (const exam of exams) {
        const { draft } = app.doors.exam(exam);
        if (asJson) json({ file, exam, items: draft.items.length, doubts: draft.doubts.length });
        else line(`${file}: draft ${exam}, ${draft.items.length} items, ${draft.doubts.length} questions. Look it over on the page.`);
      }
    } catch (error) {
      tell(`${file}: ${told(error)}`);
      exit = exits.failed;
    }
  }
  return exit;
}

/** Words for a person; what nobody foresaw is thrown on. */
function told(error: unknown): string {
  const plain = asRefusal(error);
  if (plain instanceof Error && 'code' in plain) return plain.message;
  throw error;
}
