// What the manifest promises of folders that are not trusted, and that all it names is there.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';

const here = import.meta.dirname;
const manifest = JSON.parse(fs.readFileSync(path.join(here, 'package.json'), 'utf8'));
const settings = manifest.contributes.configuration.properties;
const { untrustedWorkspaces } = manifest.capabilities;

test('in a folder that is not trusted no setting of the folder names a file', () => {
  assert.equal(untrustedWorkspaces.supported, 'limited');
  // A free text may be a path; a choice among words, a number or a reading NAME=CHOICE may not.
  const free = Object.keys(settings).filter((name) => settings[name].type === 'string' && !settings[name].enum);
  assert.deepEqual([...untrustedWorkspaces.restrictedConfigurations].sort(), free.sort());
  assert.equal(settings['nclanguage.readings'].items.pattern, '^[A-Za-z]+=[A-Za-z0-9/]+$');
});

test('the program that is run is set for the machine, never by a folder', () => {
  assert.equal(settings['nclanguage.serverPath'].scope, 'machine');
});

test('each step of the walkthrough has its text, and the commands it offers exist', () => {
  const commands = new Set(manifest.contributes.commands.map(({ command }) => command));
  const [{ steps }] = manifest.contributes.walkthroughs;
  assert.equal(new Set(steps.map(({ id }) => id)).size, steps.length);
  for (const { id, description, media, completionEvents } of steps) {
    assert.ok(fs.existsSync(path.join(here, media.markdown)), `${id}: ${media.markdown}`);
    const named = [...description.matchAll(/command:([\w.]+)/g), ...completionEvents.join(' ').matchAll(/onCommand:([\w.]+)/g)].map(([, name]) => name);
    assert.ok(named.length > 0, id);
    for (const name of named) assert.ok(name.startsWith('workbench.') || commands.has(name), `${id}: ${name}`);
  }
});
