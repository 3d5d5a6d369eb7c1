/** Small words that show where one thing ends and the next begins, in a breath without a pause. */

/** They tie what follows to what was said: no part begins with one of these, and none ends before one. */
export const linking: readonly string[] = ['for', 'because', 'cause', 'cos', 'with', 'due', 'so', 'to', 'until', 'till', 'since', 'or', 'nor', 'than', 'as', 'when', 'if', 'that', 'which', 'of', 'but', 'except', 'bar', 'apart', 'after', 'before', 'where', 'while', 'by', 'from', 'still', 'same', 'on', 'in', 'at', 'along', 'under', 'over', 'through', 'off', 'out', 'up', 'down', 'either', 'too', 'now', 'all', 'rest', 'others', 'otherwise', 'else'];
/** They wait for what follows: no part ends with one of these. */
export const waiting: readonly string[] = ['and', 'the', 'a', 'an', 'no', 'not', 'both', 'between', 'behind', 'is', 'are', 'was', 'were', 'has', 'have', 'had', 'be', 'been', 'he', 'she', 'him', 'her', 'his', 'it', 'i', 'we', 'will', 'would', 'could', 'can', 'should', 'did', 'do', 'does', 'need', 'needs', 'very', 'quite', 'bit', 'without', 'another', 'some', 'any', 'suspect', 'suspected', 'possible', 'told', 'advised', 'gave'];
/** They point back to other things of the breath, which cannot be parted from them. */
export const pointing: readonly string[] = ['them', 'those', 'these', 'respectively'];
/** Rounds of time that are a recheck by themselves. */
export const rounds: readonly string[] = ['yearly', 'annually', 'annual', 'once', 'monthly'];
/** They tell nothing of their own. */
export const idleWords: readonly string[] = ['used', 'needed', 'required', 'necessary', 'today', 'please'];
/** How verbs of looking and feeling begin. */
export const looking = /^(?:examin|check|see|seen|look|feel|felt|palpat|visuali|prob|assess|reach|got$|get$|near|skipped|missed)/;
/** People, and how the horse stood: a fact of the visit may begin here. */
export const ofTheVisit: readonly string[] = ['vet', 'owner', 'stood'];
/** The kinds of work that name a thing of their own. */
export const workNamed: readonly string[] = ['procedure', 'agent', 'sedate', 'topUp', 'recheck', 'refer', 'monitor', 'advise', 'report', 'noBit'];
