/** The page's front door: three places and the settings, each its own room. */
import './tokens.css';
import './base.css';
import { render } from 'preact';
import { Live } from './live/index.tsx';
import { Check } from './check/index.tsx';
import { Book } from './book/index.tsx';
import { Settings } from './settings/index.tsx';
import { link, where } from './router.ts';
import './mood.ts';

const places = [
  ['listen', 'Listening'],
  ['check', 'Looking over'],
  ['book', 'The book'],
  ['settings', 'Settings'],
] as const;

function Place() {
  const { place, rest } = where.value;
  if (place === 'listen') return <Live />;
  if (place === 'check') return <Check id={rest[0]} key={rest[0]} />;
  if (place === 'settings') return <Settings />;
  return <Book />;
}

function Page() {
  const here = where.value.place;
  return (
    <>
      <a
        class="skip"
        href="#main"
        onClick={(e) => {
          e.preventDefault();
          document.querySelector<HTMLElement>('main')?.focus();
        }}
      >
        To the page itself
      </a>
      <header class="places" data-mood={here === 'listen' ? 'night' : undefined}>
        <a class="name" href={link('book')} aria-label="Quidnote, the book">
          <img src="./mark.svg" alt="" width="26" height="26" />
          <span>Quidnote</span>
        </a>
        <nav aria-label="Places">
          {places.map(([id, label]) => (
            <a key={id} href={link(id)} aria-current={here === id ? 'page' : undefined}>
              {label}
            </a>
          ))}
        </nav>
      </header>
      <Place />
    </>
  );
}

render(<Page />, document.getElementById('page')!);
