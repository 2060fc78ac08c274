// node --test: which links are turned, and that the command shows the page the server named.
const assert = require('node:assert');
const { test } = require('node:test');
const { createReference, linkToPreview } = require('./reference');

const page = { scheme: 'file', path: '/cache/NC3001.md' };

test('a link to a file becomes a link to the preview; others stay', () => {
  const web = { value: 'x', target: { scheme: 'https', path: '/x' } };
  const pages = new Map();
  const diagnostics = [{ code: { value: 'NC3001', target: page } }, { code: 'NC3002' }, { code: web }, {}];
  assert.deepStrictEqual(linkToPreview(diagnostics, pages, (code) => `to ${code}`), [
    { code: { value: 'NC3001', target: 'to NC3001' } }, { code: 'NC3002' }, { code: web }, {},
  ]);
  assert.deepStrictEqual([...pages], [['NC3001', page]]);
});

test('the link carries the code, and the command shows its page', () => {
  const shown = [];
  let run;
  const reference = createReference({
    Uri: { from: (parts) => parts },
    commands: {
      registerCommand: (name, action) => {
        run = action;
        return { name };
      },
      executeCommand: (...words) => shown.push(words),
    },
  });
  const diagnostics = [{ code: { value: 'NC3001', target: page } }];
  reference.middleware.handleDiagnostics('file', diagnostics, () => {});
  const { scheme, path, query } = diagnostics[0].code.target;
  assert.strictEqual(scheme, 'command');
  assert.strictEqual(path, reference.command.name);
  run(...JSON.parse(query));
  run('NC9999');
  assert.deepStrictEqual(shown, [['markdown.showPreview', page]]);
});
