// Writes the JSON schema of a department's file from the core's tables. With --print the text goes to standard output.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { json, load, root } from './core.mjs';

const tables = await load(`
  export { catalogue } from './shared/findings/catalogue.ts';
  export { settableSeverities } from './shared/sheet/department/department.ts';
  export { limitUnits, usualLimits } from './shared/sheet/department/limits.ts';
  export { settableCodes } from './shared/sheet/department/read-department.ts';
  export { styleChoices } from './shared/sheet/department/style.ts';
`);
const text = json(schema(tables));
if (process.argv.includes('--print')) process.stdout.write(text);
else writeFileSync(join(root, 'docs/department.schema.json'), text);

function schema({ catalogue, settableSeverities, settableCodes, limitUnits, usualLimits, styleChoices }) {
  const severities = settableCodes.map((code) => [
    code,
    {
      description: `${catalogue[code].meaning} Usually \`${catalogue[code].severity}\`.`,
      enum: settableSeverities,
    },
  ]);
  const limits = Object.entries(usualLimits).map(([name, usual]) => [name, limit(usual, limitUnits)]);
  const style = Object.entries(styleChoices).map(([name, { meaning, ways }]) => {
    const examples = Object.entries(ways).map(([word, example]) => `${word}: ${example}`);
    return [name, { description: `${meaning} ${examples.join('; ')}.`, enum: Object.keys(ways) }];
  });
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'What a department has decided for all its sheets',
    ...keys({
      severities: {
        description: 'Findings that the department takes more or less seriously than is usual.',
        ...keys(Object.fromEntries(severities)),
      },
      limits: {
        description: 'Limits of the department, each with its source.',
        ...keys(Object.fromEntries(limits)),
      },
      style: {
        description: 'House style, where good schools differ.',
        ...keys(Object.fromEntries(style)),
      },
      review: {
        description: 'Time from one review of a sheet to the next. Usually 12 months.',
        type: ['string', 'integer'],
        pattern: '^[0-9]{1,3} *(months?|years?)?$',
        minimum: 1,
        maximum: 120,
      },
    }),
  };
}

/** A list of keys and values with these keys alone. A key with nothing behind it says nothing. */
function keys(properties) {
  return { type: ['object', 'null'], additionalProperties: false, properties };
}

function limit({ meaning, value, unit, source, most }, limitUnits) {
  const units = Object.keys(limitUnits[unit]).map((one) => one.replaceAll(' ', ' *'));
  const end = most === undefined ? '' : ` Up to ${most.value} ${unit} (${most.why}).`;
  return {
    description: `${meaning} Usually ${value} ${unit} (${source}).${end}`,
    ...keys({
      limit: {
        type: 'string',
        pattern: `^[0-9]+(\\.[0-9]+)? *(${units.join('|')})$`,
        examples: [`${value} ${unit}`],
      },
      source: {
        description: 'On whose word: published source or rule of the school.',
        type: 'string',
        minLength: 1,
      },
    }),
    required: ['limit', 'source'],
  };
}
