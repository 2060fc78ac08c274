// The files beside a program, by their names: setup, machine and cutting data.
const patterns = ['**/*.setup.json', '**/*.machine.json', '**/*.cutting.json'];

/** @param {{ path: string }} uri */
const isJobFile = (uri) => /\.(setup|machine|cutting)\.json$/.test(uri.path);

/** @param {{ path: string }} uri */
const isSetup = (uri) => /\.setup\.json$/.test(uri.path);

module.exports = { patterns, isJobFile, isSetup };
