/** Facts of the visit: phrases that name what a sentence is about; the sentence is kept in its own words. */
export type FactAbout = 'behaviour' | 'consent' | 'present' | 'history' | 'use' | 'feed' | 'bit' | 'vaccination' | 'heart-rate' | 'gag' | 'light' | 'photographs' | 'earlier-treatment' | 'method' | 'account' | 'medication' | 'tetanus';

export const factSay: readonly { readonly about: FactAbout; readonly say: readonly string[] }[] = [
  { about: 'behaviour', say: ['(stood|standing|stands) (quietly|well|still|nicely|like a rock)', 'well behaved', '(was|is) (quiet|good|calm|nervous|difficult|fractious|restless|head shy|tense) (to (do|work on|examine|handle)|for the (exam|gag)|throughout|in the gag)', 'head shy', 'behaved (well|nicely|beautifully|badly)', 'good as gold', 'fought the gag', 'would not stand still', 'very well mannered'] },
  { about: 'consent', say: ['[owner] (gave|gives|has given) consent', 'consent (given|obtained|signed|recorded|for)', '(consents|consented) to', 'verbal consent', 'written consent', '(owner|agent) agrees to', '(owner|agent) (agreed|consented)'] },
  { about: 'present', say: ['[the] (owner|groom|agent|trainer|yard manager|vet) [is|was] present', '[the] (owner|groom|agent|trainer|yard manager) (is|was) [here|there|holding|with us]', 'held by [the] (owner|groom|trainer)', 'owner not present', 'in the presence of'] },
  { about: 'use', say: ['used for', 'ridden for', '(competes|competing|hunts|hunting|hacks|hacking|eventing|show jumping) [in|at]', 'in (full|light|medium|hard) work', 'retired', 'brood mare', 'broodmare', '(dressage|show jumping|eventing|driving|polo|racing|hacking|school|riding school) horse'] },
  { about: 'feed', say: ['fed [on]', 'eats (haylage|hay|grass|soaked hay|hard feed)', 'on (haylage|soaked hay|ad lib hay|hard feed)', 'lives out [on grass]', 'at grass'] },
  { about: 'bit', say: ['ridden in (a|an) [(loose ring|eggbutt|full cheek|double jointed|single jointed|french link|hanging cheek)] (snaffle|pelham|bitless bridle|double bridle|gag bit|kimblewick|bridle|bit)', '(snaffle|pelham|double bridle|bitless bridle|kimblewick)', 'wears a'] },
  { about: 'vaccination', say: ['vaccination(s)', 'vaccinated', 'vaccinations are'] },
  { about: 'tetanus', say: ['tetanus [is|cover|vaccination|jab]'] },
  { about: 'heart-rate', say: ['heart rate', 'pulse [rate]'] },
  { about: 'gag', say: ['gag (on|in|off|out|fitted|well tolerated|used)', 'speculum (on|in|off|out|fitted|well tolerated|used)', 'accepted the (gag|speculum)'] },
  { about: 'light', say: ['head torch (on|used)', 'light source', 'used a head (light|torch)'] },
  { about: 'method', say: ['examined (by|with) [a] (hand|palpation|mirror|probe|mirror and probe|feel)', 'checked with [a] (mirror|probe)', 'by palpation', 'used [a|the] (mirror|probe)', 'mirror and probe used', 'mirror used', 'probe used'] },
  { about: 'photographs', say: ['no photographs taken', 'photographs on file'] },
  { about: 'earlier-treatment', say: ['last (rasped|floated|done|seen|treated|checked|dental)', '(rasped|floated|done|treated|seen|reduced) (last year|last time|two years ago|six months ago|by the previous|previously)', 'previous (dental|dentist|dental work|dental treatment|work)', 'never been (done|seen|rasped|floated)', 'last dental', 'first time (seen|done)', 'had (teeth|them) done'] },
  { about: 'account', say: ['(paid|pays|paying) (cash|by card|in cash|by bank transfer|today)', 'invoice', 'account to', 'send the bill'] },
  { about: 'history', say: ['owner (reports|says|reported|noticed|mentions|mentioned|has noticed)', 'no problems (reported|eating)', 'eating (well|normally)', 'no (concerns|complaints) from the owner', 'owner has no concerns', 'history of colic', 'eats well', 'no history'] },
  { about: 'medication', say: ['on (bute|pergolide|medication|antibiotics)', 'not on any medication', 'no medication'] },
];
