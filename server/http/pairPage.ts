/** The one page that a device sees before it is let in. */
const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => escapes[c]!);

export const pairPolicy = "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
export const pairStyle = `body { font: 1.2rem/1.5 system-ui, sans-serif; max-width: 24rem; margin: 12vh auto; padding: 0 1.5rem; color-scheme: light dark; }
label { display: block; margin-top: 1.2rem; } input, button { font: inherit; width: 100%; box-sizing: border-box; padding: 0.7rem; margin-top: 0.3rem; }
input[name=code] { letter-spacing: 0.15em; text-transform: uppercase; } button { margin-top: 1.6rem; font-weight: 600; } p[role=alert] { font-weight: 600; }`;

/** @param code as it came in the address; @param trouble what went wrong the last time */
export const pairPage = (code: string, trouble = ''): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Let this device in</title><link rel="stylesheet" href="/pair.css"></head>
<body><main><h1>Let this device in</h1><p>It will see the records of this machine and may dictate into them, until it is taken off the list.</p>
${trouble && `<p role="alert">${escaped(trouble)}</p>`}
<form method="post" action="/pair"><label>Code shown by the program<input name="code" value="${escaped(code.slice(0, 20))}" autocomplete="off" autocapitalize="characters" spellcheck="false" required></label>
<label>What to call it<input name="name" value="Phone" maxlength="60" required></label><button>Let in</button></form></main></body></html>
`;
