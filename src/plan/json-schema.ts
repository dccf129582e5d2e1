import { z } from 'zod';
import { PLAN_FORMAT, PLAN_VERSION } from './file.ts';
import { recordSchemas } from './records/index.ts';

/** The JSON Schema (draft 2020-12) of a plan file, made from the schemas that plans are read with. */
export const planJsonSchema = (): Record<string, unknown> => {
  const definitions: Record<string, unknown> = {};
  for (const [type, schema] of Object.entries(recordSchemas)) {
    const { $schema: _, ...definition } = z.toJSONSchema(schema, { io: 'input' });
    definitions[type] = definition;
  }
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Lampwright plan',
    description:
      'A plan file: a flat list of records. Keys that are not named here are kept and written back.',
    type: 'object',
    required: ['format', 'version', 'records'],
    properties: {
      format: { const: PLAN_FORMAT },
      version: { const: PLAN_VERSION },
      records: {
        type: 'array',
        items: { anyOf: Object.keys(recordSchemas).map((type) => ({ $ref: `#/$defs/${type}` })) },
      },
    },
    $defs: definitions,
  };
};

/** The schema as it is published in shared/plan.schema.json. */
export const planJsonSchemaText = (): string => `${JSON.stringify(planJsonSchema(), undefined, 2)}\n`;
