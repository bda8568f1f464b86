/** The panel's page before anything is drawn: fixed elements, a strict policy, and every word that does not come from the server. */

export interface PageParts {
  /** Addresses of the style sheet and of the page's program. */
  readonly style: string;
  readonly script: string;
  /** Where style sheets may come from. */
  readonly source: string;
  /** Fresh for each page. */
  readonly nonce: string;
  readonly words: PageWords;
}

/** In the language of the editor. */
export interface PageWords {
  readonly drawing: string;
  readonly paper: string;
  readonly paperHelp: string;
  readonly handleHelp: string;
  readonly slip: string;
  readonly invitation: string;
  readonly description: string;
}

export const englishWords: PageWords = {
  drawing: 'Drawing',
  paper: 'Paper',
  paperHelp:
    'Arrow keys move the cross by 1 mm, with Shift by 10 mm; the slip below reads the place. P or Enter adds a probe there. Tab goes to what can be moved.',
  handleHelp:
    'Arrow keys move it by 1 mm, with Shift by 10 mm. Enter goes to its line. Escape takes the move back.',
  slip: 'Reading slip',
  invitation: 'Point at the paper to read it, click to add a probe, drag what lies on it.',
  description: 'Description',
};

export function panelHtml({ style, script, source, nonce, words }: PageParts): string {
  const policy = `default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(words.drawing)}</title>
<link rel="stylesheet" href="${escaped(style)}">
</head>
<body>
<main>
<h1 class="papervolt-unseen" id="heading">${escaped(words.drawing)}</h1>
<div id="stage">
<div id="picture"></div>
<svg id="hands" role="application" tabindex="0" preserveAspectRatio="xMidYMid meet" aria-label="${escaped(words.paper)}" aria-describedby="paper-help"></svg>
</div>
<section id="slip" aria-label="${escaped(words.slip)}">
<div id="words">
<p id="reading" role="status">${escaped(words.invitation)}</p>
<p id="remark" role="status"></p>
</div>
<svg id="cross" viewBox="-10 -10 20 20" aria-hidden="true"><g id="directions"><path class="dash" d="M0 -6V6"/><path class="barb" d="M-8 0H8M3.4 -3.5L8 0L3.4 3.5"/></g></svg>
</section>
<details id="description">
<summary>${escaped(words.description)}</summary>
<h2 id="title"></h2>
<p id="text"></p>
</details>
<p class="papervolt-unseen" id="paper-help">${escaped(words.paperHelp)}</p>
<p class="papervolt-unseen" id="handle-help">${escaped(words.handleHelp)}</p>
</main>
<script nonce="${escaped(nonce)}" src="${escaped(script)}"></script>
</body>
</html>
`;
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => text.replace(/[&<>"']/gu, (mark) => entities[mark] ?? mark);
