// node --test: which executable is chosen, and that no opened folder has a say in it.
const assert = require('node:assert');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { test } = require('node:test');
const { findServer } = require('./server-path');

const name = process.platform === 'win32' ? 'nclanguage.exe' : 'nclanguage';
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'nclanguage-'));
process.on('exit', () => fs.rmSync(folder, { recursive: true, force: true }));

function executable(...parts) {
  const file = path.join(folder, ...parts);
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(file, '', { mode: 0o755 });
  return file;
}

const empty = path.join(folder, 'extension-without-server');
const set = executable('set', name);
const onPath = executable('on-path', name);
const bundled = executable('extension', 'server', `${process.platform}-${process.arch}`, name);

test('the path that is set comes first', () => {
  process.env.PATH = path.dirname(onPath);
  assert.deepStrictEqual(findServer(set, path.join(folder, 'extension')), { path: set });
});

test('then the one inside the extension, then the one on the PATH', () => {
  process.env.PATH = path.dirname(onPath);
  assert.deepStrictEqual(findServer('', path.join(folder, 'extension')), { path: bundled });
  assert.deepStrictEqual(findServer('', empty), { path: onPath });
});

test('a set path that cannot be run is a problem, never passed over for another', () => {
  process.env.PATH = path.dirname(onPath);
  assert.match(findServer(path.join(folder, 'nowhere'), path.join(folder, 'extension')).problem, /nowhere/);
  assert.match(findServer(folder, empty).problem, /cannot|not a file/);
  assert.match(findServer('bin/nclanguage', empty).problem, /full path/);
});

test('entries of the PATH that depend on the folder are passed over', () => {
  process.chdir(path.dirname(onPath));
  process.env.PATH = ['', '.', '..' + path.sep + 'on-path'].join(path.delimiter);
  assert.match(findServer('', empty).problem, /not found on the PATH/);
});
