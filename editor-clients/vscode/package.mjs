// Packages the extension: bundles the client, copies the grammar and the licence, asks the executable for the JSON
// schemas, and writes the .vsix. Its version is the one of Directory.Build.props, as everywhere.
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
const [, version] = /<VersionPrefix>([^<]+)</.exec(fs.readFileSync(path.join(root, 'Directory.Build.props'), 'utf8'));
const { values: options } = parseArgs({
  options: { server: { type: 'string' }, target: { type: 'string' }, out: { type: 'string' } },
});
if (!options.server) {
  console.error('package.mjs: --server FILE is needed (the nclanguage executable)');
  process.exit(2);
}
const server = path.resolve(options.server);
const out = path.resolve(options.out ?? path.join(root, 'artifacts', `nclanguage-${version}${options.target ? `-${options.target}` : ''}.vsix`));

// Everything of the package is put together in a folder of its own.
const stage = path.join(root, 'artifacts', 'vscode', path.basename(out, '.vsix'));
fs.rmSync(stage, { recursive: true, force: true });
fs.mkdirSync(path.dirname(out), { recursive: true });
for (const folder of ['dist', 'syntaxes', 'schemas']) fs.mkdirSync(path.join(stage, folder), { recursive: true });
for (const name of ['README.md', 'language-configuration.json']) fs.copyFileSync(path.join(here, name), path.join(stage, name));
fs.cpSync(path.join(here, 'walkthrough'), path.join(stage, 'walkthrough'), { recursive: true });
fs.copyFileSync(path.join(root, 'grammars/nc.tmLanguage.json'), path.join(stage, 'syntaxes/nc.tmLanguage.json'));
fs.copyFileSync(path.join(root, 'LICENSE'), path.join(stage, 'LICENSE'));
const manifest = JSON.parse(fs.readFileSync(path.join(here, 'package.json'), 'utf8'));
// Nothing of the making belongs into what is installed.
for (const member of ['scripts', 'devDependencies']) delete manifest[member];
fs.writeFileSync(path.join(stage, 'package.json'), JSON.stringify({ ...manifest, version }, null, 2) + '\n');

for (const kind of ['setup', 'machine', 'cutting']) {
  const [command, before] = server.endsWith('.dll') ? ['dotnet', [server]] : [server, []];
  const schema = forCompletion(JSON.parse(execFileSync(command, [...before, 'schema', kind], { encoding: 'utf8' })));
  // The files allow both; this editor asks its schemas.
  Object.assign(schema, { allowComments: true, allowTrailingCommas: true });
  fs.writeFileSync(path.join(stage, 'schemas', `${kind}.schema.json`), JSON.stringify(schema, null, 2) + '\n');
}

if (options.target) {
  const name = options.target.startsWith('win32') ? 'nclanguage.exe' : 'nclanguage';
  const file = path.join(stage, 'server', options.target, name);
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
  outfile: path.join(stage, 'dist/extension.js'),
  bundle: true,
  minify: true,
  platform: 'node',
  target: 'node18',
  format: 'cjs',
  external: ['vscode'],
  legalComments: 'inline',
});
await createVSIX({ cwd: stage, packagePath: out, dependencies: false, allowMissingRepository: true, target: options.target });
