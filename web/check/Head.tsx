/** Whose exam this is: the horse, the visit, and both in a form when something is to be put right. */
import { useState } from 'preact/hooks';
import type { Header } from '../../parser/contract/draft.ts';
import { dayWords, momentWords } from '../when.ts';
import { amountWords } from '../words.ts';
import { act, busy, confirmed, draft } from './desk.ts';

const age = (horse: Header['horse']): string =>
  horse?.age
    ? `${horse.age.about ? 'about ' : ''}${horse.age.rising ? 'rising ' : ''}${amountWords(horse.age.value)} ${horse.age.unit}${horse.age.value === 1 ? '' : 's'}`
    : '';
export const horseWords = (horse: Header['horse']): string =>
  [age(horse), horse?.colour, horse?.breed, horse?.sex, horse?.height].filter(Boolean).join(', ');

export function Head() {
  const [open, setOpen] = useState(false);
  const d = draft.value!;
  const { horse, owner, yard, examiner, startedAt } = d.header;
  const last = d.revisions.at(-1);
  return (
    <header class="exam-head">
      <div class="who">
        <h1>{horse?.name ?? 'No name yet'}</h1>
        <p>
          {[horseWords(horse), owner && `owner ${owner}`, yard].filter(Boolean).join(' · ') || (
            <span class="soft">Nothing said of the horse yet</span>
          )}
        </p>
        <p class="soft">
          {dayWords(startedAt)}
          {examiner ? `, ${examiner}` : ''}
        </p>
      </div>
      <div class="state">
        {confirmed.value && last ? (
          <p class="kept">
            <span aria-hidden="true">✓ </span>Confirmed by {last.by}, {momentWords(last.when)}
          </p>
        ) : (
          <p class="soft">{d.reopened ? `Open again, because ${d.reopened.reason}` : 'A draft until you confirm it.'}</p>
        )}
        {confirmed.value && last?.reason && <p class="small">Changed since, because {last.reason}</p>}
        {!confirmed.value && (
          <button type="button" class="quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
            Horse and visit
          </button>
        )}
      </div>
      {open && <HeadForm header={d.header} close={() => setOpen(false)} />}
    </header>
  );
}
function HeadForm({ header, close }: { header: Header; close: () => void }) {
  const [form, setForm] = useState({
    name: header.horse?.name ?? '',
    sex: header.horse?.sex ?? '',
    years: header.horse?.age?.unit === 'year' ? String(header.horse.age.value) : '',
    owner: header.owner ?? '',
    yard: header.yard ?? '',
    examiner: header.examiner ?? '',
  });
  const put = (part: Partial<typeof form>): void => setForm((old) => ({ ...old, ...part }));
  const years = Number(form.years.replace(',', '.'));
  async function save(event: Event): Promise<void> {
    event.preventDefault();
    const horse = {
      ...header.horse,
      name: form.name || undefined,
      sex: form.sex || undefined,
      age:
        form.years.trim() && years >= 0
          ? { value: years, unit: 'year' }
          : header.horse?.age?.unit === 'year'
            ? undefined
            : header.horse?.age,
    } as NonNullable<Header['horse']>;
    if (
      await act(
        { act: 'header', header: { horse, owner: form.owner || null, yard: form.yard || null, examiner: form.examiner || null } },
        'Horse and visit are put right.',
      )
    )
      close();
  }
  const text = (name: 'name' | 'owner' | 'yard' | 'examiner', label: string) => (
    <label class="field">
      <span class="label">{label}</span>
      <input maxLength={100} value={form[name]} onInput={(e) => put({ [name]: e.currentTarget.value })} />
    </label>
  );
  return (
    <form class="head-form sheet" onSubmit={(e) => void save(e)}>
      {text('name', 'Horse')}
      <label class="field">
        <span class="label">Sex</span>
        <select value={form.sex} onChange={(e) => put({ sex: e.currentTarget.value })}>
          <option value="">Not said</option>
          {['mare', 'gelding', 'stallion', 'colt', 'filly'].map((s) => (
            <option key={s}>{s}</option>
          ))}
        </select>
      </label>
      <label class="field">
        <span class="label">Age, years</span>
        <input class="short" inputMode="decimal" value={form.years} onInput={(e) => put({ years: e.currentTarget.value })} />
      </label>
      {text('owner', 'Owner')}
      {text('yard', 'Yard')}
      {text('examiner', 'Examiner')}
      <div class="row">
        <button type="submit" class="main" disabled={busy.value}>
          Put it so
        </button>
        <button type="button" class="quiet" onClick={close}>
          Leave it
        </button>
      </div>
    </form>
  );
}
