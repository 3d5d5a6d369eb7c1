/** The book: what was found, when, and who is due. One page; a horse has a page of its own. */
import { where } from '../router.ts';
import { HorsePage } from './HorsePage.tsx';
import { Due } from './Due.tsx';
import { Horses } from './Horses.tsx';
import { Search } from './Search.tsx';
import { Upload } from './Upload.tsx';
import { Visits } from './Visits.tsx';
import './book.css';

export function Book() {
  const { rest, query } = where.value;
  if (rest[0] === 'horse' && rest[1]) return <HorsePage name={rest[1]} key={rest[1]} />;
  const searching = [...query.keys()].length > 0;
  return (
    <main class="paper book" id="main" tabIndex={-1}>
      <div class="row between">
        <h1>The book</h1>
        <Upload />
      </div>
      <Search query={query} />
      {!searching && (
        <div class="shelves">
          <Due />
          <div class="stack wide">
            <Visits />
            <Horses />
          </div>
        </div>
      )}
    </main>
  );
}
