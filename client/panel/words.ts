/** What the panel says, in the language of the editor. */
import * as vscode from 'vscode';
import { type ConversationWords, englishConversation } from './conversation.ts';
import { englishWords, type PageWords } from './html.ts';

const translated = <W extends Readonly<Record<keyof W, string>>>(words: W): W => {
  const entries = Object.entries<string>(words).map(([key, text]) => [key, vscode.l10n.t(text)]);
  // The same keys with their words in another language.
  return Object.fromEntries(entries) as W;
};

export const pageWords = (): PageWords => translated(englishWords);
export const conversationWords = (): ConversationWords => translated(englishConversation);
