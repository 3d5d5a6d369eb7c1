/** Words of the trade: those of the lexicon's conditions, procedures and regions, of four letters or more, and the numbers. */
import { conditions } from '../../../parser/lexicon/conditions.ts';
import { digitWords, teenWords } from '../../../parser/lexicon/numbers.ts';
import { procedures } from '../../../parser/lexicon/procedures.ts';
import { regions } from '../../../parser/lexicon/regions.ts';
import { qualifierIds, severityIds, surfaceIds } from '../../../parser/lexicon/surfaces.ts';

export function tradeWords(): ReadonlySet<string> {
  const forms = [conditions, procedures, regions].flatMap((table) =>
    Object.values(table).flatMap(({ say }: { readonly say: readonly string[] }) => [...say]),
  );
  const words = [...forms, ...qualifierIds, ...severityIds, ...surfaceIds]
    .flatMap((form) => form.toLowerCase().split(/[^a-z]+/))
    .filter((word) => word.length >= 4);
  return new Set([...words, ...Object.keys(digitWords), ...Object.keys(teenWords), 'oh', 'millimetre']);
}
