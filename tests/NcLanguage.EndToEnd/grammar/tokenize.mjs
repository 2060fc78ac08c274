// tokenize.mjs GRAMMAR FILE…: colours files with a TextMate grammar by the library that VS Code colours with, and prints for
// each file its lines, each a list of [start, end, scopes] with columns in UTF-16 from 0. It judges nothing.
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';

const client = path.resolve(import.meta.dirname, '../../../editor-clients/vscode');
const require = createRequire(path.join(client, 'node_modules/vscode-tmgrammar-test/package.json'));
const { Registry, parseRawGrammar, INITIAL } = require('vscode-textmate');
const onig = require('vscode-oniguruma');

const [grammarFile, ...files] = process.argv.slice(2);
const wasm = fs.readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
await onig.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
const registry = new Registry({
  onigLib: Promise.resolve({ createOnigScanner: (patterns) => new onig.OnigScanner(patterns), createOnigString: (text) => new onig.OnigString(text) }),
  loadGrammar: async () => parseRawGrammar(fs.readFileSync(grammarFile, 'utf8'), grammarFile),
});
const grammar = await registry.loadGrammar('source.nc');
const told = {};
for (const file of files) {
  let state = INITIAL;
  told[file] = fs.readFileSync(file, 'utf8').split(/\r?\n/).map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    return tokens.map((token) => [token.startIndex, token.endIndex, token.scopes.slice(1).join(' ')]);
  });
}
console.log(JSON.stringify(told));
