/** `npm run bench`: the engine by its stages. `npm run bench -- editor`: the language server as an editor feels it. */
import { benchEditor } from './editor.ts';
import { benchEngine } from './engine.ts';

const asked = process.argv.slice(2);
const json = asked.includes('--json');
if (asked.includes('editor')) await benchEditor(json);
else benchEngine(json);
