/** A small reader of XML for tests: throws where tags do not close, attributes are not quoted or entities are unknown. */

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** All elements in order of their opening tags. */
export function elementsOf(xml: string): Element[] {
  const open: string[] = [];
  const found: Element[] = [];
  let rest = xml.trim();
  while (rest !== '') {
    const text = /^[^<]+/.exec(rest)?.[0] ?? '';
    checkText(text);
    if (text !== '' && open.length === 0) throw new Error(`text outside the root: ${text}`);
    rest = rest.slice(text.length);
    if (rest === '') break;
    const tag = /^<(\/?)([a-z]+)((?:\s+[a-zA-Z:-]+="[^"<]*")*)\s*(\/?)>/.exec(rest);
    if (tag === null) throw new Error(`no tag: ${rest.slice(0, 60)}`);
    const [whole, closing, name = '', written = '', empty] = tag;
    rest = rest.slice(whole.length);
    if (closing === '/') {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
      continue;
    }
    found.push({ name, attributes: attributesOf(written) });
    if (empty !== '/') open.push(name);
  }
  if (open.length > 0) throw new Error(`not closed: ${open.join(', ')}`);
  return found;
}

function attributesOf(written: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [, name = '', value = ''] of written.matchAll(/([a-zA-Z:-]+)="([^"]*)"/g)) {
    if (name in found) throw new Error(`${name} twice`);
    checkText(value);
    found[name] = value;
  }
  return found;
}

function checkText(text: string): void {
  const loose = /&(?!(amp|lt|gt|quot|#39);)|>/.exec(text);
  if (loose !== null) throw new Error(`loose mark in ${text}`);
}
