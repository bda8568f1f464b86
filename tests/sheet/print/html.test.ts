/** Text becomes markup by escape alone; addresses carry no code. */
import { describe, expect, it } from 'vitest';
import { html } from '../../../shared/sheet/print/html.ts';
import { allowedAddress } from '../../../shared/sheet/print/links.ts';

describe('the template', () => {
  it('escapes text in content and in attributes', () => {
    expect(html`<p title="${'a" onclick="b'}">${'<script>'}</p>`.markup).toBe(
      '<p title="a&quot; onclick=&quot;b">&lt;script&gt;</p>',
    );
  });
  it('takes finished markup as it is, once', () => {
    const inner = html`<b>${'&'}</b>`;
    expect(html`${inner}${[inner, inner]}${null}${7}`.markup).toBe('<b>&amp;</b><b>&amp;</b><b>&amp;</b>7');
  });
});

describe('addresses', () => {
  it.each([
    'https://example.org/a?b=c:d',
    'HTTP://example.org',
    'notes.md',
    './a/b.png',
    '#top',
    '?a:b',
    'a/b:c',
    '//example.org',
  ])('allows %s', (address) => expect(allowedAddress(address)).toBe(address));
  it.each([
    'javascript:alert(1)',
    'JaVaScRiPt:alert(1)',
    ' javascript:alert(1)',
    'java\nscript:alert(1)',
    'java\u0000script:alert(1)',
    '\u0001javascript:alert(1)',
    'vbscript:x',
    'data:text/html,x',
    'file:///etc/passwd',
    'mailto:a@example.org',
  ])('refuses %j', (address) => expect(allowedAddress(address)).toBe(null));
});
