/** What can be said, on one page to hang in the car: made from the tables that the grammar listens with, so that it cannot promise what is not heard. */
import { commands } from '../../parser/lexicon/commands.ts';
import { conditions } from '../../parser/lexicon/conditions.ts';
import { procedures } from '../../parser/lexicon/procedures.ts';
import { scales } from '../../parser/lexicon/scales.ts';
import { shortest } from '../../parser/lexicon/shortest.ts';
import type { ConditionEntry } from '../../parser/lexicon/types.ts';
import { html, Markup } from './html.ts';

const groups: readonly (readonly [ConditionEntry['group'], string])[] = [
  ['wear', 'Wear'],
  ['gums', 'Gums and gaps'],
  ['tooth', 'The tooth itself'],
  ['number', 'Number and eruption'],
  ['bite', 'Bite'],
  ['soft', 'Soft parts'],
  ['horse', 'The whole horse'],
  ['normal', 'Nothing wrong'],
];
/** Its own name first, then forms that differ enough from one another; what means that nothing is wrong is said so. */
function spoken({ label, group, say, absentSay = [], withPlace = [] }: ConditionEntry, most: number): readonly string[] {
  const forms = group === 'normal' ? absentSay : [...say, ...absentSay, ...withPlace];
  const all = [...new Set(forms.map(shortest))].sort((a, b) => Number(b === label.toLowerCase()) - Number(a === label.toLowerCase()));
  return all.filter((form, i) => !all.slice(0, i).some((other) => form.startsWith(other.slice(0, 4)))).slice(0, most);
}
const examples: readonly (readonly [string, string])[] = [
  ['A tooth', 'one oh six, upper right six, upper right first cheek tooth, both upper sixes, two oh seven to two ten'],
  ['A gap', 'between three oh nine and three ten, three oh nine three ten, behind three oh nine'],
  ['A row, a part', 'upper left, all four rows, the uppers, left cheek, tongue, right masseter'],
  ['How much', 'four mil, three to four mil, a centimetre and a half, mild, moderate, severe, grade two'],
  ['Not there', 'no hooks, neither ulcers nor points, clear of caries, everything but two oh nine'],
  ['Not sure, not now', 'might be cracked, was loose last year, could not see the elevens'],
  ['Done, planned', 'rasped all four rows, took two mil off, did not extract, will reduce next time, owner would rather wait'],
  ['What comes next', 'see him again in six months, refer two oh nine to the vet'],
  ['Put right', 'no, make that five mil; sorry, two oh six; not one oh seven, two oh seven'],
];

/** @returns a whole page of HTML, A4, without scripts or anything fetched */
export function helpSheet(): string {
  const of = (group: ConditionEntry['group']): readonly ConditionEntry[] =>
    Object.values<ConditionEntry>(conditions).filter((entry) => entry.group === group);
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <title>Quidnote: what can be said</title>
        <style>
          ${new Markup(style)}
        </style>
      </head>
      <body>
        <main>
          <h1>What can be said</h1>
          <p>
            As you would tell a colleague; the draft shows what was understood, and asks where it is unsure. Nothing is a record before
            somebody confirms it.
          </p>
          <section>
            <h2>To steer</h2>
            <dl>
              ${Object.values(commands).map(
                ({ label, say }) =>
                  html`<div>
                    <dt>${label}</dt>
                    <dd>${say.slice(0, 2).map(shortest).join(', ')}</dd>
                  </div>`,
              )}
            </dl>
          </section>
          <section>
            <h2>Around a finding</h2>
            <dl>
              ${examples.map(
                ([label, said]) =>
                  html`<div>
                    <dt>${label}</dt>
                    <dd>${said}</dd>
                  </div>`,
              )}
            </dl>
          </section>
          ${groups.map(
            ([group, title]) =>
              html`<section>
                <h2>${title}</h2>
                <dl>
                  ${of(group).map(
                    (entry) =>
                      html`<div>
                        <dt>${entry.label}</dt>
                        <dd>${spoken(entry, 2).join(', ')}</dd>
                      </div>`,
                  )}
                </dl>
              </section>`,
          )}
          <section>
            <h2>Work</h2>
            <p>
              ${Object.values(procedures)
                .map(({ label }) => label.toLowerCase())
                .join(', ')}
            </p>
          </section>
          <section>
            <h2>Grades, as they are published</h2>
            <dl>
              ${Object.values(scales).map(
                ({ label, values, source }) =>
                  html`<div>
                    <dt>${label}</dt>
                    <dd>${values.length > 8 ? `${values[0]} to ${values.at(-1)}` : values.join(', ')}; ${source}</dd>
                  </div>`,
              )}
            </dl>
          </section>
          <footer>
            It writes down what is said. It does not diagnose, grade, dose or advise; local law and licensed practice decide who may do
            what.
          </footer>
        </main>
      </body>
    </html>`.text;
}

const style = `
@page { size: A4; margin: 9mm; }
html { background: #fff; color: #000; font: 7.4pt/1.25 Cambria, Georgia, 'Liberation Serif', serif; }
body { margin: 0; }
main { columns: 3; column-gap: 5mm; }
h1 { margin: 0 0 1mm; font-size: 17pt; font-weight: 400; line-height: 1.05; }
h2 { margin: 1.6mm 0 0.4mm; font-size: 9pt; border-bottom: 0.5pt solid #000; break-after: avoid; }
p { margin: 0; }
dl { margin: 0; }
dt { float: left; clear: left; margin-right: 0.5em; font-weight: 700; }
dl div { break-inside: avoid; }
dd { margin: 0; font-style: italic; }
footer { margin-top: 2mm; border-top: 0.5pt solid #000; padding-top: 0.6mm; }
@media screen { main { max-width: 70em; margin: 1em auto; padding: 0 1em; font-size: 11pt; } }
@media screen and (max-width: 640px) { main { columns: 1; } }
`;
