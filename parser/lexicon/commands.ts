/** Speech that steers (contract section 8). `whole` acts only as the whole phrase. */
export interface CommandEntry { readonly label: string; readonly whole: boolean; readonly say: readonly string[] }
export const commands = {
  'strike-last': { label: 'Strike the last', whole: true, say: ['scratch that', 'take that back', 'strike that', 'strike the last one'] },
  'bring-back': { label: 'Bring back', whole: true, say: ['bring that back', 'bring it back', 'put that back'] },
  amend: { label: 'Correct', whole: false, say: ['correction'] },
  answer: { label: 'Answer', whole: true, say: ['the first [one]', 'the second [one]', 'the third [one]', 'the fourth [one]'] },
  'repeat-last': { label: 'Say the last again', whole: true, say: ['say that again', 'read that back', 'read the last one back'] },
  'read-all': { label: 'Read it all', whole: true, say: ['read it all [back]', 'read everything [back]'] },
  'what-is-left': { label: 'What is left?', whole: true, say: ['what is left', 'what is left to do', "what's left", 'what have i not covered'] },
  pause: { label: 'Pause', whole: true, say: ['stop listening', 'pause [the] notes', 'pause listening'] },
  resume: { label: 'Carry on', whole: true, say: ['start listening', 'carry on listening', 'resume listening', 'resume [the] notes'] },
  'next-horse': { label: 'Next horse', whole: true, say: ['next horse'] },
  finish: { label: 'Finish', whole: true, say: ['finish [(this|the)] exam'] },
  'flag-for-veterinarian': { label: 'Mark for the vet', whole: false, say: ['flag [(that|this)] for the vet', 'mark [(that|this)] for the vet'] },
  note: { label: 'Note', whole: false, say: ['note'] },
} as const satisfies Record<string, CommandEntry>;
export type CommandId = keyof typeof commands;
export const commandIds = Object.keys(commands) as [CommandId, ...CommandId[]];
