/**
 * `npm run bench`: the engine by its stages. `npm run bench -- editor`: the language server as an editor feels it. `npm run bench --
 * checks`: how good the checks are, and what they cost.
 */
import { benchChecks } from './checks.ts';
import { benchEditor } from './editor.ts';
import { benchEngine } from './engine.ts';

const asked = process.argv.slice(2);
const json = asked.includes('--json');
if (asked.includes('editor')) await benchEditor(json);
else if (asked.includes('checks')) benchChecks(json);
else benchEngine(json);
