/** The one page that a device sees before it is let in. */
const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => escapes[c]!);

export const pairPolicy = "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
/** The page's own paper and ink, by day and by night; it stands alone because nothing else is let through yet. */
export const pairStyle = `:root { color-scheme: light dark; --ground: light-dark(#f5f0e4, #14181b); --sheet: light-dark(#fffcf5, #1d2327); --ink: light-dark(#14181b, #f5f0e4); --edge: light-dark(#74705f, #84939d); --now: light-dark(#7a5a12, #e3b94f); --look: light-dark(#96401f, #ec9a7e); }
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 1.15rem/1.5 system-ui, -apple-system, 'Segoe UI', Roboto, 'Noto Sans', sans-serif; }
main { max-width: 26rem; margin: 10vh auto; padding: 0 1.5rem; }
h1 { font: 600 2.2rem/1.15 'Iowan Old Style', 'Palatino Linotype', Palatino, P052, Georgia, serif; margin: 0 0 0.6rem; }
p { margin: 0; } p[role=alert] { margin-top: 1.2rem; padding: 0.7rem 1rem; border: 1px solid var(--look); border-radius: 10px; color: var(--look); font-weight: 600; }
label { display: block; margin-top: 1.4rem; }
input, button { font: inherit; color: inherit; width: 100%; min-height: 56px; padding: 0.5rem 0.9rem; margin-top: 0.3rem; border: 1px solid var(--edge); border-radius: 10px; background: var(--sheet); }
input[name=code] { font: 600 1.6rem ui-monospace, 'DejaVu Sans Mono', monospace; letter-spacing: 0.12em; text-transform: uppercase; }
button { margin-top: 1.8rem; background: var(--ink); border-color: var(--ink); color: var(--ground); font-weight: 600; font-size: 1.25rem; }
:focus-visible { outline: 3px solid var(--now); outline-offset: 2px; }`;

/** @param code as it came in the address; @param trouble what went wrong the last time */
export const pairPage = (code: string, trouble = ''): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Let this device in</title><link rel="stylesheet" href="/pair.css"></head>
<body><main><h1>Let this device in</h1><p>It will see the records of this machine and may dictate into them, until it is taken off the list.</p>
${trouble && `<p role="alert">${escaped(trouble)}</p>`}
<form method="post" action="/pair"><label>Code shown by the program<input name="code" value="${escaped(code.slice(0, 20))}" autocomplete="off" autocapitalize="characters" spellcheck="false" required></label>
<label>What to call it<input name="name" value="Phone" maxlength="60" required></label><button>Let in</button></form></main></body></html>
`;
