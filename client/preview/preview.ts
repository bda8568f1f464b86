/**
 * The built-in Markdown preview of sheets, without the editor's own interface: the plugin, the parts that it shows, and when it has to
 * be rendered anew. Nothing is solved or drawn here.
 */
import type MarkdownIt from 'markdown-it';
import type { Audience, editing } from '../../shared/index.ts';
import { previewRules } from '../../shared/index.ts';
import { PieceCache } from './cache.ts';
import { Refresh } from './refresh.ts';

/** What the preview asks of the editor. */
export interface PreviewHost {
  /** Tells the language server which texts are shown; lost where it does not run yet. */
  watch(watch: editing.Watch): void;
  /** Renders every open preview anew. */
  refresh(): void;
  /** Runs once after so many ms, unless the function that it returns is called before. */
  later(delay_ms: number, run: () => void): () => void;
}

export interface Preview {
  extendMarkdownIt<M>(markdown: M): M;
  /** Ready parts have come from the server. */
  take(update: editing.PreviewUpdate): void;
  /** From now on sheets are shown as this reader gets them. */
  show(reader: Audience): void;
  /** A server runs that knows nothing of what was said before. */
  connected(): void;
  /** A text is closed. */
  closed(uri: string): void;
  dispose(): void;
}

export function createPreview(host: PreviewHost, reader: Audience): Preview {
  const cache = new PieceCache();
  const refresh = new Refresh(host, () => cache.outdated());
  const watched = new Set<string>();
  let audience = reader;

  const rendered = (uri: string): void => {
    refresh.postpone();
    if (!watched.has(uri)) {
      watched.add(uri);
      host.watch({ uri, audience });
    }
  };

  return {
    extendMarkdownIt(markdown) {
      // The editor's preview hands over a markdown-it of version 12 or newer.
      previewRules(markdown as InstanceType<typeof MarkdownIt>, {
        reader: () => audience,
        begin(document) {
          if (document === null) return cache.unnamed();
          rendered(document);
          return cache.rendering(document);
        },
      });
      return markdown;
    },
    take(update) {
      if (update.audience !== audience || !watched.has(update.uri)) return;
      cache.take(update);
      refresh.consider();
    },
    show(next) {
      if (next === audience) return;
      audience = next;
      for (const uri of watched) host.watch({ uri, audience });
      refresh.now();
    },
    connected() {
      for (const uri of watched) host.watch({ uri, audience });
    },
    closed(uri) {
      cache.forget(uri);
      if (watched.delete(uri)) host.watch({ uri, audience: null });
    },
    dispose() {
      refresh.cancel();
    },
  };
}
