/** A place chosen by touch: only teeth, gaps, rows and regions that exist, and only the kinds that the condition can have. */
import { useState } from 'preact/hooks';
import type { Place } from '../../parser/contract/item.ts';
import { deciduousTeeth, permanentTeeth, rowIds, supernumeraryTeeth } from '../../parser/lexicon/teeth.ts';
import type { PlaceKind } from '../../parser/lexicon/types.ts';
import { regions } from '../labels.ts';
import { placeWords, rowWords, spokenTooth } from '../mouth/names.ts';
import { spaces } from '../mouth/places.ts';

const kindWords: Readonly<Record<PlaceKind, string>> = { T: 'Teeth', S: 'Gap', R: 'Row', G: 'Region', N: 'No place' };
const quarters = [
  ['1', 'Upper right'],
  ['2', 'Upper left'],
  ['4', 'Lower right'],
  ['3', 'Lower left'],
] as const;
const kindOf = (place: Place | null): PlaceKind =>
  !place ? 'N' : 'teeth' in place ? 'T' : 'spaces' in place ? 'S' : 'rows' in place ? 'R' : 'G';
const toggled = <T,>(all: readonly T[], one: T, same = (a: T, b: T): boolean => a === b): T[] =>
  all.some((x) => same(x, one)) ? all.filter((x) => !same(x, one)) : [...all, one];

export function PlaceField({
  value,
  kinds,
  onChange,
}: {
  value: Place | null;
  kinds: readonly PlaceKind[];
  onChange: (place: Place | null) => void;
}) {
  const [chosen, setKind] = useState<PlaceKind | null>(value ? kindOf(value) : null);
  // Another condition may not stand where the one before could.
  const kind = chosen && kinds.includes(chosen) ? chosen : (kinds[0] ?? 'N');
  const first = value && 'teeth' in value ? value.teeth[0] : value && 'spaces' in value ? value.spaces[0]?.[1] : undefined;
  const [quarter, setQuarter] = useState(first ? String(((Number(first[0]) - 1) % 4) + 1) : '1');
  const choose = (next: PlaceKind): void => {
    setKind(next);
    if (next === 'N') onChange(null);
  };
  const teeth = value && 'teeth' in value ? value.teeth : [];
  const gaps = value && 'spaces' in value ? value.spaces : [];
  const rows = value && 'rows' in value ? value.rows : [];
  const region = value && 'region' in value ? value : undefined;
  const ofQuarter = [...permanentTeeth, ...supernumeraryTeeth, ...deciduousTeeth].filter(
    (t) => String(((Number(t[0]) - 1) % 4) + 1) === quarter,
  );
  return (
    <fieldset class="place-field">
      <legend>
        Place: <strong>{placeWords(value)}</strong>
      </legend>
      <div class="row tight" role="group" aria-label="Kind of place">
        {kinds.map((k) => (
          <button type="button" key={k} aria-pressed={kind === k} onClick={() => choose(k)}>
            {kindWords[k]}
          </button>
        ))}
      </div>
      {(kind === 'T' || kind === 'S') && (
        <div class="quarters" role="group" aria-label="Quarter of the mouth">
          {quarters.map(([q, label]) => (
            <button type="button" key={q} aria-pressed={quarter === q} onClick={() => setQuarter(q)}>
              {label}
            </button>
          ))}
        </div>
      )}
      {kind === 'T' && (
        <div class="row tight" role="group" aria-label="Teeth">
          {ofQuarter.map((tooth) => (
            <button
              type="button"
              key={tooth}
              aria-label={`${tooth}: ${spokenTooth(tooth)}`}
              aria-pressed={teeth.includes(tooth)}
              onClick={() => {
                const now = toggled(teeth, tooth).sort();
                onChange(now.length ? { teeth: now } : null);
              }}
            >
              {tooth}
            </button>
          ))}
        </div>
      )}
      {kind === 'S' && (
        <div class="row tight" role="group" aria-label="Gaps">
          {spaces
            .filter(([a, b]) => a[0] === quarter || b[0] === quarter)
            .map(([a, b]) => (
              <button
                type="button"
                key={a + b}
                aria-pressed={gaps.some(([x, y]) => x === a && y === b)}
                onClick={() => {
                  const now = toggled<[string, string]>(gaps, [a, b], (p, q) => p[0] === q[0] && p[1] === q[1]);
                  onChange(now.length ? { spaces: now } : null);
                }}
              >
                {a}/{b}
              </button>
            ))}
        </div>
      )}
      {kind === 'R' && (
        <div class="row tight" role="group" aria-label="Rows">
          {rowIds.map((row) => (
            <button
              type="button"
              key={row}
              aria-pressed={rows.includes(row)}
              onClick={() => {
                const now = toggled(rows, row);
                onChange(now.length ? { rows: now } : null);
              }}
            >
              {rowWords[row]}
            </button>
          ))}
        </div>
      )}
      {kind === 'G' && (
        <div class="row tight">
          <select
            aria-label="Region"
            value={region?.region ?? ''}
            onChange={(e) => onChange(e.currentTarget.value ? { region: e.currentTarget.value as keyof typeof regions } : null)}
          >
            <option value="">Choose a region</option>
            {(['inside', 'outside'] as const).map((where) => (
              <optgroup key={where} label={where === 'inside' ? 'Inside the mouth' : 'Outside the mouth'}>
                {Object.entries(regions)
                  .filter(([, r]) => r.where === where)
                  .map(([id, r]) => (
                    <option key={id} value={id}>
                      {r.label}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
          {region &&
            regions[region.region].paired &&
            (['right', 'left', 'both'] as const).map((side) => (
              <button
                type="button"
                key={side}
                aria-pressed={region.side === side}
                onClick={() => onChange({ ...region, side: region.side === side ? undefined : side })}
              >
                {side === 'both' ? 'Both sides' : side === 'left' ? 'Left' : 'Right'}
              </button>
            ))}
          {region &&
            ['lips', 'gums', 'bars'].includes(region.region) &&
            (['upper', 'lower'] as const).map((jaw) => (
              <button
                type="button"
                key={jaw}
                aria-pressed={region.jaw === jaw}
                onClick={() => onChange({ ...region, jaw: region.jaw === jaw ? undefined : jaw })}
              >
                {jaw === 'upper' ? 'Upper' : 'Lower'}
              </button>
            ))}
        </div>
      )}
    </fieldset>
  );
}
