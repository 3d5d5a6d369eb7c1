/** A recording made elsewhere, read on this machine; how far it is, and the drafts it became. */
import { useRef, useState } from 'preact/hooks';
import type { UploadLine } from '../../parser/contract/wire.ts';
import { api, Refused } from '../api.ts';
import { asWav } from './decode.ts';
import { link } from '../router.ts';

const stages: Readonly<Record<UploadLine['stage'], string>> = {
  receiving: 'Taking it in',
  opening: 'Opening it',
  hearing: 'Reading',
  ready: 'Ready to look over',
  trouble: 'It could not be read',
};

const minutes = (seconds: number): string => `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, '0')}`;
/** How long a recording is, is known only once it has been read. */
const readSoFar = ({ done = 0, of }: UploadLine): string => (of ? `${minutes(done)} of ${minutes(of)}` : `${minutes(done)} so far`);

const neither = {
  code: 'unsupported',
  message:
    'Neither the program nor this browser can open this kind of recording. The recording itself is untouched. Save it as WAV or MP3 and add it again.',
};

export function Upload() {
  const input = useRef<HTMLInputElement>(null);
  const [name, setName] = useState('');
  const [line, setLine] = useState<UploadLine | null>(null);
  const [notices, setNotices] = useState<readonly string[]>([]);
  const busy = line !== null && line.stage !== 'ready' && line.stage !== 'trouble';
  /** @returns false where the program does not know this kind of recording, and perhaps the browser does */
  async function read(file: File): Promise<boolean> {
    let known = true;
    await api.upload(file, (next) => {
      if (next.error?.code === 'unsupported' && file.type !== 'audio/wav') {
        known = false;
        return;
      }
      setLine(next);
      if (next.notices) setNotices((before) => [...new Set([...before, ...next.notices!.map(({ message }) => message)])]);
    });
    return known;
  }
  async function send(file: File | undefined): Promise<void> {
    if (!file || busy) return;
    setName(file.name);
    setNotices([]);
    setLine({ stage: 'receiving' });
    try {
      if (!(await read(file))) {
        setLine({ stage: 'opening' });
        await read(await asWav(file));
      }
    } catch (error) {
      if (error instanceof Refused) setLine({ stage: 'trouble', error: error.body });
      else if (error instanceof DOMException) setLine({ stage: 'trouble', error: neither });
      else throw error;
    }
  }
  return (
    <div
      class="upload"
      onDragOver={(e) => e.preventDefault()}
      onDrop={(e) => {
        e.preventDefault();
        void send(e.dataTransfer?.files[0]);
      }}
    >
      <input
        ref={input}
        type="file"
        accept="audio/*,.wav,.flac,.ogg,.opus,.mp3,.m4a,.aac,.webm,.mp4"
        class="out-of-sight"
        tabIndex={-1}
        aria-hidden="true"
        onChange={(e) => {
          void send(e.currentTarget.files?.[0]);
          e.currentTarget.value = '';
        }}
      />
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        Add a recording
      </button>
      {line && (
        <div class="progress small" role="status">
          <span>
            {name}: {stages[line.stage]}
            {line.stage === 'hearing' && line.done ? `, ${readSoFar(line)}` : ''}
          </span>
          {busy && (
            <progress
              aria-label={stages[line.stage]}
              max={line.of || 1}
              value={line.stage === 'hearing' && line.of ? (line.done ?? 0) : undefined}
            />
          )}
          {line.stage === 'ready' &&
            line.exams?.map((id, n) => (
              <a key={id} class="button" href={link('check', id)}>
                Look it over{line.exams!.length > 1 ? ` (${n + 1})` : ''}
              </a>
            ))}
          {notices.map((message) => (
            <p key={message} class="notice">
              {message}
            </p>
          ))}
          {line.stage === 'trouble' && (
            <p class="trouble">{line.error?.message ?? 'What went wrong was not told. The recording itself is untouched.'}</p>
          )}
        </div>
      )}
    </div>
  );
}
