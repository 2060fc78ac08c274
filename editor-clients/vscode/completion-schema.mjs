// A JSON Schema that completes and explains, and finds no fault: the server checks the same files, knows more, says it in
// the trade's words and brings fixes. With the schema as it stands each mistake would be listed twice.

const checks = ['pattern', 'minimum', 'maximum', 'exclusiveMinimum', 'exclusiveMaximum', 'minItems', 'maxItems', 'required', 'oneOf'];

/**
 * @param {unknown} schema a schema or a part of one
 * @returns {unknown} a copy in which every value is valid
 */
export function forCompletion(schema) {
  if (Array.isArray(schema)) return schema.map(forCompletion);
  if (typeof schema !== 'object' || schema === null) return schema;
  const copy = {};
  for (const [key, value] of Object.entries(schema)) {
    if (checks.includes(key) || (key === 'additionalProperties' && value === false)) continue;
    if (key === 'enum') copy.examples = value.filter((one) => one !== null);
    else if (key === 'type') copy.type = anyOther(value);
    // Members named like a keyword are members.
    else if (['properties', 'patternProperties', '$defs'].includes(key)) {
      copy[key] = Object.fromEntries(Object.entries(value).map(([name, part]) => [name, forCompletion(part)]));
    } else copy[key] = forCompletion(value);
  }
  return copy;
}

/** The first type decides what is written for a new member; the others let any value pass. */
function anyOther(type) {
  const first = [type].flat();
  return [...new Set([...first, 'object', 'array', 'string', 'number', ...(first.includes('boolean') ? ['boolean'] : []), 'null'])];
}
