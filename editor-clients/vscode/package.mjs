// Packages the extension: bundles the client, copies the grammar and the licence, asks the executable for the JSON
// schemas, and writes the .vsix.
//   node package.mjs --server FILE [--target PLATFORM] [--out FILE.vsix]
//     --server   the nclanguage executable (or nclanguage.dll) that gives the schemas
//     --target   linux-x64, win32-x64, darwin-arm64 …: also bundles --server, for that platform alone
//     --out      default artifacts/nclanguage-VERSION[-PLATFORM].vsix at the top of the repository
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { createVSIX } from '@vscode/vsce';
import esbuild from 'esbuild';
import { forCompletion } from './completion-schema.mjs';

const here = import.meta.dirname;
const root = path.resolve(here, '../..');
const { version } = JSON.parse(fs.readFileSync(path.join(here, 'package.json'), 'utf8'));
const { values: options } = parseArgs({
  options: { server: { type: 'string' }, target: { type: 'string' }, out: { type: 'string' } },
});
if (!options.server) {
  console.error('package.mjs: --server FILE is needed (the nclanguage executable)');
  process.exit(2);
}
const server = path.resolve(options.server);
const out = path.resolve(options.out ?? path.join(root, 'artifacts', `nclanguage-${version}${options.target ? `-${options.target}` : ''}.vsix`));

for (const folder of ['dist', 'syntaxes', 'schemas', 'server']) {
  fs.rmSync(path.join(here, folder), { recursive: true, force: true });
}
fs.mkdirSync(path.dirname(out), { recursive: true });
fs.mkdirSync(path.join(here, 'syntaxes'));
fs.mkdirSync(path.join(here, 'schemas'));
fs.copyFileSync(path.join(root, 'grammars/nc.tmLanguage.json'), path.join(here, 'syntaxes/nc.tmLanguage.json'));
fs.copyFileSync(path.join(root, 'LICENSE'), path.join(here, 'LICENSE'));

for (const kind of ['setup', 'machine', 'cutting']) {
  const [command, before] = server.endsWith('.dll') ? ['dotnet', [server]] : [server, []];
  const schema = forCompletion(JSON.parse(execFileSync(command, [...before, 'schema', kind], { encoding: 'utf8' })));
  // The files allow both; this editor asks its schemas.
  Object.assign(schema, { allowComments: true, allowTrailingCommas: true });
  fs.writeFileSync(path.join(here, 'schemas', `${kind}.schema.json`), JSON.stringify(schema, null, 2) + '\n');
}

if (options.target) {
  const name = options.target.startsWith('win32') ? 'nclanguage.exe' : 'nclanguage';
  const file = path.join(here, 'server', options.target, name);
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.copyFileSync(server, file);
  fs.chmodSync(file, 0o755);
  // A build that needs the files beside it would be copied just as well, and start nowhere.
  if (options.target === `${process.platform}-${process.arch}`) {
    try {
      execFileSync(file, ['--version'], { stdio: 'pipe' });
    } catch {
      console.error(`package.mjs: ${server} does not run by itself; for --target publish it as Native AOT (see README.md)`);
      process.exit(1);
    }
  }
}

await esbuild.build({
  entryPoints: [path.join(here, 'src/extension.js')],
  outfile: path.join(here, 'dist/extension.js'),
  bundle: true,
  minify: true,
  platform: 'node',
  target: 'node18',
  format: 'cjs',
  external: ['vscode'],
  legalComments: 'inline',
});
await createVSIX({ cwd: here, packagePath: out, dependencies: false, allowMissingRepository: true, target: options.target });
