/** However it is said that a vet is to see something: "your vet'll want to have a look at that", "I'd have a vet check it". */
export const vetSay: readonly string[] = ['[(the|a|your|his|her|their|my|our)] [own] (vet|vets|veterinarian|veterinary surgeon)'];
/** What a vet has yet to do, before the verb of looking. */
export const hasYetTo: readonly string[] = [
  '(is|are) [going] to',
  '(is|are) going to (want|have|need) to',
  '(will|would|might|may) [(want|have|need|like)] [to]',
  '(should|must) [(really|probably|definitely)]',
  '[(really|probably|definitely)] (ought|has|have|needs|need|wants|want) to',
  '(had|would) (better|best)',
];
/** Who has it looked at, before the vet. */
export const hasLooked: readonly string[] = ['(get|getting|have|having|let|ask|like|love|want|prefer|happier if|happy if)'];
export const looks: readonly string[] = [
  '(see|sees|saw|check|checks|checked|examine|examines|look at|looks at|looked at)',
  '(take|takes|took|have|has|had|get) (a|another) [(proper|good|quick|closer)] (look|peek|squint) at',
];
/** "Should be seen by a vet", "get it looked at by the vet": behind what it is. */
export const seenBy: readonly string[] = [
  '(seen|looked at|checked|examined) [(soon|again|properly)] by (the|a|your|his|her|their) (vet|veterinarian)',
];
