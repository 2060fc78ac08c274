import { createGenerator } from 'ts-json-schema-generator';
import { writeFileSync } from 'node:fs';
const schema = createGenerator({ path: 'messages.ts', tsconfig: 'tsconfig.json', type: 'Messages', expose: 'all', topRef: false, additionalProperties: false, jsDoc: 'none', skipTypeCheck: true }).createSchema('Messages');
writeFileSync('lsp.schema.json', JSON.stringify(schema));
