const assert = require('node:assert/strict');
const test = require('node:test');
const { describe } = require('./setup-status');

const mill = { name: 'the mill', problems: 0, isChosen: true };

test('the setup and the machine in use are named', () => {
  const { text, tooltip, isFaulty } = describe({ setup: { name: 'nc.setup.json', problems: 0 }, machine: mill });
  assert.equal(text, '$(checklist) nc.setup.json · the mill');
  assert.equal(tooltip, 'Setup: nc.setup.json. Machine: the mill. Click to open the setup.');
  assert.equal(isFaulty, false);
});

test('without a setup it is said what is not checked', () => {
  const { text, tooltip } = describe({ machine: { name: 'iso-mill', problems: 0, isChosen: false } });
  assert.equal(text, '$(add) No setup');
  assert.equal(
    tooltip,
    'No setup goes with this program, so clamps, stock and tools are not checked. No machine was chosen: iso-mill stands in. Click to begin one.',
  );
});

test('mistakes in either file are counted', () => {
  const { text, tooltip, isFaulty } = describe({ setup: { name: 'a.setup.json', problems: 1 }, machine: { ...mill, problems: 1 } });
  assert.match(text, /^\$\(warning\) a\.setup\.json/);
  assert.match(tooltip, / 2 mistakes in these files\. /);
  assert.equal(isFaulty, true);
});
