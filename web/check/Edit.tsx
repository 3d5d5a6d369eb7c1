/** Change an item, or add one by hand. What is typed here is marked as typed, with who and when; the words stay as they were said. */
import { useMemo, useRef, useState } from 'preact/hooks';
import type { Item, ItemKind } from '../../parser/contract/item.ts';
import { kindLabels } from '../labels.ts';
import { placeOf } from '../mouth/places.ts';
import { act, busy, editing, picked } from './desk.ts';
import { blank, fieldsOf, fitted, missing } from './fields.ts';
import { FieldControl } from './Field.tsx';

type Form = Readonly<Record<string, unknown>>;

export function Edit({ item }: { item?: Item }) {
  const start = useMemo<Form>(() => (item ? { ...item } : blank('finding', picked.value ? placeOf(picked.value) : undefined)), [item]);
  const [form, setForm] = useState<Form>(start);
  const root = useRef<HTMLFormElement>(null);
  const lacks = missing(form);
  const close = (): void => {
    editing.value = null;
  };
  async function save(event: Event): Promise<void> {
    event.preventDefault();
    if (lacks.length) {
      root.current?.querySelector<HTMLElement>('select, [aria-pressed]')?.focus();
      return;
    }
    const done = item
      ? await act({ act: 'edit', id: item.id, item: form }, 'Changed. What it was stays readable.')
      : await act({ act: 'add', item: form }, 'Added by hand.');
    if (done) close();
  }
  return (
    <form
      ref={root}
      class="edit stack"
      aria-label={item ? 'Change this' : 'Add by hand'}
      onSubmit={(e) => void save(e)}
      onKeyDown={(e) => {
        if (e.key === 'Escape') {
          e.stopPropagation();
          close();
        }
      }}
    >
      {!item && (
        <fieldset class="field">
          <legend>Kind</legend>
          <div class="row tight">
            {(Object.keys(kindLabels) as ItemKind[]).map((kind) => (
              <button type="button" key={kind} aria-pressed={form.kind === kind} onClick={() => setForm(blank(kind, form.place))}>
                {kindLabels[kind]}
              </button>
            ))}
          </div>
        </fieldset>
      )}
      {fieldsOf(form).map((field) => (
        <FieldControl
          key={`${String(form.kind)}-${field.name}-${'scale' in field ? field.scale : ''}`}
          field={field}
          value={form[field.name]}
          onChange={(value) => setForm((old) => fitted({ ...old, [field.name]: value }))}
        />
      ))}
      <div class="row">
        <button type="submit" class="main" disabled={busy.value || lacks.length > 0}>
          {item ? 'Put it so' : 'Add it'}
        </button>
        <button type="button" class="quiet" onClick={close}>
          Leave it
        </button>
        {lacks.length > 0 && <span class="soft small">Still to choose: {lacks.join(', ').toLowerCase()}</span>}
      </div>
    </form>
  );
}
