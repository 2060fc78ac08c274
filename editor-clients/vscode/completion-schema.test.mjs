// node --test: what the transformed schema still offers, and that it no longer finds fault.
import assert from 'node:assert';
import { test } from 'node:test';
import { forCompletion } from './completion-schema.mjs';

test('values are offered, not demanded', () => {
  assert.deepStrictEqual(
    forCompletion({ description: 'The unit.', enum: ['mm', 'inch', null], default: 'mm' }),
    { description: 'The unit.', examples: ['mm', 'inch'], default: 'mm' },
  );
});

test('members keep their names and texts, and others may stand beside them', () => {
  assert.deepStrictEqual(
    forCompletion({
      properties: { minimum: { description: 'A member named like a check.', minimum: 0 }, place: { $ref: '#/$defs/point' } },
      required: ['minimum'],
      additionalProperties: false,
      $defs: { point: { items: { maximum: 9 }, minItems: 3 } },
    }),
    {
      properties: { minimum: { description: 'A member named like a check.' }, place: { $ref: '#/$defs/point' } },
      $defs: { point: { items: {} } },
    },
  );
});

test('the type that is meant comes first, so that an editor writes its brackets or quotes', () => {
  assert.deepStrictEqual(forCompletion({ type: ['array', 'null'] }).type, ['array', 'null', 'object', 'string', 'number']);
  assert.strictEqual(forCompletion({ type: 'boolean' }).type[0], 'boolean');
});
