/** One control of the form, by its kind. Every choice is a legal value; free words only where the record keeps words. */
import type { Measure, Place } from '../../parser/contract/item.ts';
import { PlaceField } from './Place.tsx';
import { doseUnits, measureNames, unitsOf, type Field, type Option } from './fields.ts';

type Change = (value: unknown) => void;
const few = 7;
/** A number as typed: a comma is a point; anything else is no number. */
const number = (text: string): number | undefined => {
  const n = Number(text.replace(',', '.'));
  return text.trim() === '' || Number.isNaN(n) || n < 0 ? undefined : n;
};

export function FieldControl({ field, value, onChange }: { field: Field; value: unknown; onChange: Change }) {
  switch (field.control) {
    case 'place':
      return <PlaceField value={(value as Place | null) ?? null} kinds={field.kinds} onChange={onChange} />;
    case 'one':
      return field.long || field.options.length > few ? (
        <Chosen field={field} value={value} onChange={onChange} />
      ) : (
        <OneOf label={field.label} options={field.options} value={value} needed={field.needed} onChange={onChange} />
      );
    case 'grade':
      return (
        <OneOf
          label={field.label}
          options={field.options}
          value={
            (value as { scale: string; value: string } | undefined)?.scale === field.scale ? (value as { value: string }).value : undefined
          }
          needed={false}
          onChange={(v) => onChange(v === undefined ? undefined : { scale: field.scale, value: v })}
        />
      );
    case 'many':
      return <ManyOf field={field} value={(value as string[] | undefined) ?? []} onChange={onChange} />;
    case 'yes':
      return (
        <OneOf
          label={field.label}
          options={[
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No' },
          ]}
          value={value === undefined ? undefined : value ? 'yes' : 'no'}
          needed={field.needed ?? false}
          onChange={(v) => onChange(v === undefined ? undefined : v === 'yes')}
        />
      );
    case 'words':
      return (
        <label class="field">
          <span class="label">{field.label}</span>
          <input
            maxLength={500}
            value={(value as string | undefined) ?? ''}
            onInput={(e) => onChange(e.currentTarget.value || undefined)}
          />
        </label>
      );
    case 'amount':
      return (
        <label class="field">
          <span class="label">
            {field.label}, {field.unit}
          </span>
          <input
            inputMode="decimal"
            class="short"
            value={typeof value === 'number' ? value : Array.isArray(value) ? value.join(' to ') : ''}
            onChange={(e) => onChange(range(e.currentTarget.value))}
          />
        </label>
      );
    case 'measure':
      return <Measures value={(value as Measure[] | undefined) ?? []} onChange={onChange} />;
    case 'dose':
      return <Dose value={(value as { value?: unknown; unit?: string } | undefined) ?? {}} onChange={onChange} />;
    case 'after':
      return <After value={value as { value?: number; unit?: string; said?: string } | undefined} onChange={onChange} />;
  }
}
/** "3" or "3 to 4". */
function range(text: string): unknown {
  const [a, b] = text.split(/\s*(?:to|-|–)\s*/).map(number);
  return a !== undefined && b !== undefined ? [a, b] : a;
}
function OneOf({
  label,
  options,
  value,
  needed,
  onChange,
}: {
  label: string;
  options: readonly Option[];
  value: unknown;
  needed: boolean;
  onChange: (value: string | undefined) => void;
}) {
  return (
    <fieldset class="field">
      <legend>{label}</legend>
      <div class="row tight">
        {options.map((o) => (
          <button
            type="button"
            key={o.value}
            aria-pressed={value === o.value}
            onClick={() => onChange(value === o.value && !needed ? undefined : o.value)}
          >
            {o.label}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
function Chosen({ field, value, onChange }: { field: Extract<Field, { control: 'one' }>; value: unknown; onChange: Change }) {
  const groups = [...new Set(field.options.map((o) => o.group))];
  const list = (options: readonly Option[]) =>
    options.map((o) => (
      <option key={o.value} value={o.value}>
        {o.label}
      </option>
    ));
  return (
    <label class="field">
      <span class="label">{field.label}</span>
      <select value={(value as string | undefined) ?? ''} onChange={(e) => onChange(e.currentTarget.value || undefined)}>
        <option value="">{field.needed ? 'Choose' : 'Not said'}</option>
        {groups.map((group) =>
          group ? (
            <optgroup key={group} label={group}>
              {list(field.options.filter((o) => o.group === group))}
            </optgroup>
          ) : (
            list(field.options)
          ),
        )}
      </select>
    </label>
  );
}
function ManyOf({ field, value, onChange }: { field: Extract<Field, { control: 'many' }>; value: readonly string[]; onChange: Change }) {
  const flip = (one: string): void => {
    const now = value.includes(one) ? value.filter((v) => v !== one) : [...value, one];
    onChange(now.length ? now : undefined);
  };
  return (
    <details class="field" open={value.length > 0}>
      <summary>
        {field.label}
        {value.length ? `: ${value.join(', ')}` : ''}
      </summary>
      <div class="row tight">
        {field.options.map((o) => (
          <button type="button" key={o.value} aria-pressed={value.includes(o.value)} onClick={() => flip(o.value)}>
            {o.label}
          </button>
        ))}
      </div>
    </details>
  );
}
function Measures({ value, onChange }: { value: readonly Measure[]; onChange: Change }) {
  const put = (i: number, part: Partial<Measure>): void => onChange(value.map((m, k) => (k === i ? { ...m, ...part } : m)));
  return (
    <fieldset class="field">
      <legend>Measures</legend>
      {value.map((m, i) => (
        <div class="row tight" key={i}>
          <select
            aria-label="What is measured"
            value={m.what}
            onChange={(e) => {
              const what = e.currentTarget.value as Measure['what'];
              put(i, { what, unit: unitsOf(what)[0] as Measure['unit'] });
            }}
          >
            {measureNames.map((n) => (
              <option key={n}>{n}</option>
            ))}
          </select>
          <input
            aria-label="How much"
            inputMode="decimal"
            class="short"
            value={Array.isArray(m.value) ? m.value.join(' to ') : (m.value ?? '')}
            onChange={(e) => put(i, { value: range(e.currentTarget.value) as Measure['value'] })}
          />
          <select aria-label="Unit" value={m.unit} onChange={(e) => put(i, { unit: e.currentTarget.value as Measure['unit'] })}>
            {unitsOf(m.what).map((u) => (
              <option key={u} value={u}>
                {u === 'degree' ? 'degrees' : u}
              </option>
            ))}
          </select>
          <button type="button" aria-pressed={m.about} onClick={() => put(i, { about: !m.about })}>
            about
          </button>
          <button
            type="button"
            class="quiet"
            aria-label="Take this measure away"
            onClick={() => onChange(value.length > 1 ? value.filter((_, k) => k !== i) : undefined)}
          >
            ×
          </button>
        </div>
      ))}
      <button type="button" class="quiet" onClick={() => onChange([...value, { what: 'height', unit: 'mm', about: false }])}>
        Add a measure
      </button>
    </fieldset>
  );
}
function Dose({ value, onChange }: { value: { value?: unknown; unit?: string | undefined }; onChange: Change }) {
  return (
    <fieldset class="field">
      <legend>Dose, as it was given</legend>
      <div class="row tight">
        <input
          aria-label="Amount"
          inputMode="decimal"
          class="short"
          value={typeof value.value === 'number' ? value.value : ''}
          onChange={(e) => {
            const n = number(e.currentTarget.value);
            onChange(n === undefined && !value.unit ? undefined : { ...value, value: n });
          }}
        />
        <select
          aria-label="Unit"
          value={value.unit ?? ''}
          onChange={(e) => onChange({ ...value, unit: e.currentTarget.value || undefined })}
        >
          <option value="">unit not said</option>
          {doseUnits.map((u) => (
            <option key={u}>{u}</option>
          ))}
        </select>
      </div>
    </fieldset>
  );
}
function After({ value, onChange }: { value: { value?: number; unit?: string; said?: string } | undefined; onChange: Change }) {
  return (
    <fieldset class="field">
      <legend>When</legend>
      <div class="row tight">
        <input
          aria-label="In how many"
          inputMode="decimal"
          class="short"
          value={value?.value ?? ''}
          onChange={(e) => {
            const n = number(e.currentTarget.value);
            onChange(n === undefined ? undefined : { value: n, unit: value?.unit ?? 'month' });
          }}
        />
        <select
          aria-label="Unit of time"
          value={value?.unit ?? 'month'}
          onChange={(e) => onChange({ value: value?.value ?? 1, unit: e.currentTarget.value })}
        >
          {['day', 'week', 'month', 'year'].map((u) => (
            <option key={u} value={u}>
              {u}s
            </option>
          ))}
        </select>
        {value?.said && <span class="soft">said: {value.said}</span>}
      </div>
    </fieldset>
  );
}
