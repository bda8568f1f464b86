/** Ready parts are bounded in letters; what a text has now is never let go. */
import { describe, expect, it } from 'vitest';
import { PieceCache } from '../../../client/preview/cache.ts';

const piece = (key: string, letters = 100) => ({ key, html: key.padEnd(letters, '.'), message: null });
const wish = (key: string) => ({ key, place: key, size: null });

function taken(cache: PieceCache, uri: string, keys: readonly string[], letters?: number): void {
  cache.take({ uri, audience: 'teachers', keys, pieces: keys.map((key) => piece(key, letters)) });
}

const has = (cache: PieceCache, key: string): boolean => cache.unnamed().piece(wish(key)) !== null;

describe('room', () => {
  it('what has not been used for longest goes first', () => {
    const cache = new PieceCache(350);
    for (const key of ['a', 'b', 'c']) taken(cache, 'x', [key]);
    expect(has(cache, 'a')).toBe(true);
    taken(cache, 'x', ['d']);
    expect(['a', 'b', 'c', 'd'].filter((key) => has(cache, key))).toEqual(['a', 'c', 'd']);
  });

  it('what a text has now stays, however much it is', () => {
    const cache = new PieceCache(350);
    taken(cache, 'x', ['a', 'b', 'c', 'd', 'e']);
    taken(cache, 'y', ['f']);
    expect(['a', 'b', 'c', 'd', 'e', 'f'].filter((key) => has(cache, key)).length).toBe(6);
    cache.forget('x');
    expect(['a', 'b', 'c', 'd', 'e', 'f'].filter((key) => has(cache, key))).toEqual(['d', 'e', 'f']);
  });

  it('stays bounded over many edits', () => {
    const cache = new PieceCache(10_000);
    for (let i = 0; i < 1000; i++) taken(cache, 'x', [`k${i}`], 500);
    const kept = Array.from({ length: 1000 }, (_, i) => `k${i}`).filter((key) => has(cache, key));
    expect(kept.length).toBe(20);
  });
});

describe('what a text showed', () => {
  it('is outdated when a part comes that was not ready, and no more when it was rendered again', () => {
    const cache = new PieceCache();
    cache.rendering('x').piece(wish('a'));
    expect(cache.outdated()).toBe(false);
    taken(cache, 'x', ['a', 'b']);
    expect(cache.outdated()).toBe(true);
    cache.rendering('x').piece(wish('a'));
    expect(cache.outdated()).toBe(false);
  });

  it('stands in for what is not ready in the same place and of the same size', () => {
    const cache = new PieceCache();
    taken(cache, 'x', ['a']);
    cache.rendering('x').piece({ key: 'a', place: 'first', size: '1 × 1' });
    const next = cache.rendering('x');
    const standIn = (place: string, size: string | null) => next.lastGood({ key: 'b', place, size });
    expect(next.piece({ key: 'b', place: 'first', size: '1 × 1' })).toBe(null);
    expect(standIn('first', '1 × 1')).toBe(piece('a').html);
    expect(standIn('first', null)).toBe(piece('a').html);
    expect(standIn('first', '2 × 1')).toBe(null);
    expect(standIn('second', '1 × 1')).toBe(null);
    // And again: what stood in is remembered.
    cache.rendering('x').piece({ key: 'b', place: 'first', size: '1 × 1' });
    expect(cache.rendering('x').lastGood({ key: 'b', place: 'first', size: '1 × 1' })).toBe(piece('a').html);
  });
});
