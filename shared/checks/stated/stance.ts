/**
 * Whether a sentence says how things are with the setup as it stands. Questions, suppositions, predictions, what a pupil writes, what a
 * mark scheme rejects, examples, and another state of the apparatus say nothing that the solution could contradict.
 */

/** Words are whole words, in any capitals. */
const othersWords: readonly RegExp[] = [
  // What a mark scheme turns down, and what is wrong.
  /\b(?:reject\w*|incorrect\w*|wrong(?:ly)?|mistake\w*|mistaken|misconception\w*|misread\w*|false|untrue|common errors?|do not accept|not credit)\b/iu,
  // What others say or have found.
  /\b(?:pupil|student|learner|candidate|classmate|colleague|child|children|someone|somebody|people|textbook|book|group|class)(?:s|es|’s|'s|s’|s')?\b[^.;]{0,60}\b(?:say|says|said|saying|claim|claims|claimed|write|writes|wrote|written|think|thinks|thought|get|gets|got|find|finds|found|read|reads|measure|measures|measured|obtain|obtains|obtained|record|records|recorded|state|states|stated|argue|argues|expect|expects|believe|believes|has|have|had|plot|plots|plotted|report|reports|reported|answer|answers|answered|forget|forgets|calculate|calculates|calculated|draws?|drew)\b/iu,
  /\b(?:a|one|another|some|many|the|few|most|weaker) (?:pupil|student|learner|candidate|group)(?:s|’s|'s|s’|s')?\b/iu,
  /\b(?:he|she|they|his|her|their) (?:says?|said|claims?|writes?|wrote|gets?|got|finds?|found|reads?|measures?|measured|readings?|answers?|results?)\b/iu,
];

const otherStates: readonly RegExp[] = [
  // Questions.
  /\?/u,
  // Suppositions.
  /\b(?:if|supposes?|supposed|supposing|imagine|assum(?:e|es|ed|ing|ption)|would|could|might|unless|were|whether|let us say|hypothetical(?:ly)?|in case|as though|pretend)\b/iu,
  /\b(?:may|say,)\s/u,
  // Predictions and guesses.
  /\b(?:predict\w*|guess\w*|hypothes\w*|estimate\w*|conjecture\w*)\b/iu,
  // Examples and other benches.
  /\be\.g\.|\b(?:for example|for instance|such as|examples?|samples?|imaginary|typical(?:ly)?|usual(?:ly)?|sometimes|often|last year|elsewhere|in practice)\b/iu,
  // Space, of which the paper is no picture.
  /\b(?:spheres?|point charges?|in (?:free |empty )?space|vacuum)\b/iu,
  // Another state of the apparatus.
  /\b(?:at|with|for) (?:twice|half|double|three times|ten times) /iu,
  /\b(?:joined|linked|tied|wired|connected|touch(?:es|ing)?)\b[^.;:]{0,12}\b(?:to|with|against)?[ \u00a0](?:(?:bar|electrode|ring|disc) )?(?:\p{Lu}(?![\p{L}.])|the (?:positive|negative) (?:bar|plate|electrode|disc|ring))/u,
  /\b(?:fresh|used|new|old|flat|weak|worn|run-down|different|another|other|next|second|third) (?:run|try|attempt|part|lesson|time|experiment|cell|cells|battery|batteries|supply|paper|sheet|meter|voltmeter|setup|set-up|shape|arrangement)\b/iu,
  /\b(?:loose|oxidi[sz]ed|lifted|damp|humid|faulty|broken|dirty|poor contact|bad contact|creased|torn)\b/iu,
  /\b(?:swapped|reversed|interchanged|exchanged|doubled|halved|tripled|removed|moved|shifted|turned round|taken (?:out|off|away)|replaced|disconnected|unplugged|earthed|grounded|short-circuited|no longer|this time|instead|earlier|previously|yesterday)\b/iu,
  /\b(?:swapping|reversing|interchanging|exchanging|doubling|halving|removing|moving|replacing|joining|disconnecting|adding|leaving out)\b/iu,
];

/** A sentence that says how things are. */
export function isClaim(sentence: string): boolean {
  return isOwn(sentence) && !otherStates.some((pattern) => pattern.test(sentence));
}

/** A sentence that the sheet answers for, be it a question or an example: sums in it should come out. */
export function isOwn(sentence: string): boolean {
  return !othersWords.some((pattern) => pattern.test(sentence));
}

const negation =
  /\b(?:not|never|nowhere|neither|nor|cannot|hardly|rather than|instead of|without|no)\b|n['’]t\b/iu;

/** Whether what stands before a place denies it; a semicolon, a colon and "but" begin anew. */
export function isDenied(before: string): boolean {
  const clause = before.split(/[;:]|,? but /u).at(-1) ?? '';
  return negation.test(clause.replace(/\bno(?: |\u00a0)(?:current|field)\b|\bnot only\b|\bNo\. ?\d/giu, ''));
}

/** Whether an index of a run lies between quotation marks. */
export function isQuoted(text: string, index: number): boolean {
  const before = text.slice(0, index);
  const opened = Math.max(before.lastIndexOf('“'), before.lastIndexOf('‘'), before.lastIndexOf('„'));
  if (opened >= 0 && !/[”’](?!\p{L})/u.test(before.slice(opened)) && /[”’]/u.test(text.slice(index)))
    return true;
  return (before.match(/"/gu)?.length ?? 0) % 2 === 1 && text.slice(index).includes('"');
}

const changeVerbs =
  /\b(?:revers|swap|interchang|exchang|remov|tak|join|link|connect|touch|mov|shift|turn|doubl|halv|replac|chang|cut|lift|add|unclip|disconnect|fold|bend)/iu;
const changes: readonly RegExp[] = [
  /\b(?:reverse|swap|interchange|exchange)\b/iu,
  /\b(?:[Rr]emove|[Tt]ake (?:out|off|away|the)|[Uu]nclip|[Dd]isconnect|[Ll]ift|[Mm]ove|[Ss]hift|[Tt]urn|[Bb]end|[Cc]ut|[Rr]eplace|[Cc]hange|[Dd]ouble|[Hh]alve|[Ff]old)\b[^.;]{0,40}\b(?:ring|disc|disk|bars?|spikes?|prongs?|box|electrodes?|strips?|shapes?|cells?|battery|supply|voltage|paper|\p{Lu}(?![\p{L}\p{N}]))/u,
  /\b(?:join|link|connect|touch)\b[^.;]{0,40}\b(?:ring|disc|disk|box|electrode|\p{Lu})\b[^.;]{0,20}\b(?:to|with)\b(?! the (?:negative|positive) (?:terminal|pole|socket)| the (?:cell|meter|supply|voltmeter))/iu,
  /\badd\b[^.;]{0,20}\b(?:cell|ring|disc|bar|electrode|battery)/iu,
];

/** Whether a text has the apparatus changed: what is said after it may hold for another state. */
export function changesSetup(text: string): boolean {
  return changeVerbs.test(text) && changes.some((pattern) => pattern.test(text));
}
