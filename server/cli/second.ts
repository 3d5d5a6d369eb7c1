/** quidnote second-reader install | status | remove: the only command that may use a network, and only when asked. */
import { installSecondReader, removeSecondReader, secondDir, SecondReaderError, secondReaderStatus } from '../app/second.ts';
import { openApp } from '../app.ts';
import type { Ear } from '../app/ear.ts';
import type { Engine } from '../speech/engine.ts';
import { exits, line, tell, type Exit } from './out.ts';

export async function secondReaderCommand(what: string | undefined, weights: string | undefined): Promise<Exit> {
  const dir = secondDir();
  try {
    switch (what) {
      case 'install': {
        let shown = -1;
        await installSecondReader(dir, {
          ...(weights !== undefined && { from: weights }),
          onProgress: (text, done, total) => {
            const percent = total ? Math.floor((100 * (done ?? 0)) / total) : -1;
            if (percent < 0 || percent >= shown + 5) {
              shown = percent;
              tell(percent < 0 ? text : `${text} ${percent} %`);
            }
          },
        });
        return exits.ok;
      }
      case 'status': {
        const { built, weights: file, usable } = await secondReaderStatus(dir);
        line(
          usable
            ? `The second reader is ready. Its weights: ${file}`
            : `The second reader is not ready (${built ? 'built' : 'not built'}, ${file === null ? 'no weights' : `weights ${file}`}). There is one reader; everything works with it.`,
        );
        return exits.ok;
      }
      case 'remove':
        await removeSecondReader(dir);
        line('The second reader was removed. A weights file of your own was left where it is.');
        return exits.ok;
      default:
        tell('second-reader wants install, status or remove. See quidnote --help.');
        return exits.usage;
    }
  } catch (error) {
    if (!(error instanceof SecondReaderError)) throw error;
    tell(error.message);
    return exits.failed;
  }
}

/** Both readers once more over a whole exam; what differs becomes a question. */
export async function rereadExam(dir: string, exam: string, ear: Ear, second: Engine | undefined): Promise<Exit> {
  if (second === undefined) {
    await ear.close();
    tell('The second reader is not installed, so there is nobody to ask. Run: npx --no-install quidnote second-reader install');
    return exits.notSetUp;
  }
  const app = openApp(dir, ear, { second });
  try {
    const raised = await app.rereadBySecond(exam);
    line(
      raised === 0
        ? 'The second reader agrees, or heard nothing that the grammar reads.'
        : `${raised} ${raised === 1 ? 'question is' : 'questions are'} raised. Look them over on the page.`,
    );
    return exits.ok;
  } finally {
    await app.close();
  }
}
