// Shows in the status bar which setup and machine the program in hand is checked with. The server knows; here it is only shown.
const { isJobFile, patterns } = require('./job-files');

/** Milliseconds without a change before the server is asked again. */
const rest = 300;

/**
 * What the status bar says of a server's answer to nclanguage/jobInUse.
 * @param {{ setup?: { name: string, problems: number }, machine: { name: string, problems: number, isChosen: boolean } }} job
 * @returns {{ text: string, tooltip: string, isFaulty: boolean }}
 */
function describe({ setup, machine }) {
  const faults = (setup?.problems ?? 0) + machine.problems;
  const machineSaid = machine.isChosen ? `Machine: ${machine.name}.` : `No machine was chosen: ${machine.name} stands in.`;
  const mistakes = faults ? ` ${faults} ${faults === 1 ? 'mistake' : 'mistakes'} in these files.` : '';
  return {
    text: `${faults ? '$(warning)' : setup ? '$(checklist)' : '$(add)'} ${setup ? `${setup.name} · ${machine.name}` : 'No setup'}`,
    tooltip: setup
      ? `Setup: ${setup.name}. ${machineSaid}${mistakes} Click to open the setup.`
      : `No setup goes with this program, so clamps, stock and tools are not checked. ${machineSaid}${mistakes} Click to begin one.`,
    isFaulty: faults > 0,
  };
}

/**
 * @param {typeof import('vscode')} vscode
 * @param {() => import('vscode-languageclient/node').LanguageClient | undefined} getClient
 * @param {ReturnType<import('./in-hand').createInHand>} inHand
 */
function createSetupStatus(vscode, getClient, inHand) {
  const item = vscode.window.createStatusBarItem('nclanguage.setup', vscode.StatusBarAlignment.Right, 101);
  item.name = 'Setup of the NC Program';
  item.command = 'nclanguage.openSetup';
  let timer;

  /** The program that the status bar speaks of: the one in hand; beside a setup or machine file the one before, whose files these may be. */
  const shown = () => {
    const document = vscode.window.activeTextEditor?.document;
    return document && (document.languageId === 'nc' || isJobFile(document.uri)) ? inHand.program() : undefined;
  };
  const ask = async (method, document) => {
    try {
      return await getClient()?.sendRequest(method, { textDocument: { uri: document.uri.toString() } });
    } catch {
      // Superseded by the next key, or the server is ending: whoever changed that asks again.
      return undefined;
    }
  };

  async function show() {
    const document = shown();
    const job = document && (await ask('nclanguage/jobInUse', document));
    if (document !== shown()) return;
    if (!job) return item.hide();
    const { text, tooltip, isFaulty } = describe(job);
    Object.assign(item, { text, tooltip, backgroundColor: isFaulty ? new vscode.ThemeColor('statusBarItem.warningBackground') : undefined });
    item.accessibilityInformation = { label: tooltip };
    item.show();
  }

  function refresh() {
    clearTimeout(timer);
    timer = setTimeout(() => void show(), rest);
  }

  /** Opens the setup in use, or offers to begin one. */
  async function open() {
    const document = inHand.program();
    if (!document) return void vscode.window.showInformationMessage('Open a program first: the setup belongs to it.');
    const job = await ask('nclanguage/jobInUse', document);
    if (job?.setup?.uri) return void vscode.window.showTextDocument(vscode.Uri.parse(job.setup.uri));
    const begin = 'Begin a Setup';
    const name = document.uri.path.split('/').pop();
    if ((await vscode.window.showInformationMessage(`No setup goes with ${name}, so clamps, stock and tools are not checked.`, begin)) !== begin) return undefined;
    const made = await ask('nclanguage/newSetup', document);
    if (!made) return void vscode.window.showInformationMessage('Save the program first: its setup lies beside it.');
    // Nothing is written until the user saves it.
    const setup = await vscode.workspace.openTextDocument(vscode.Uri.parse(made.uri).with({ scheme: 'untitled' }));
    const editor = await vscode.window.showTextDocument(setup);
    if (!setup.getText()) await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), made.text));
    return undefined;
  }

  const watchers = patterns.map((pattern) => vscode.workspace.createFileSystemWatcher(pattern));
  const disposable = vscode.Disposable.from(
    item,
    { dispose: () => clearTimeout(timer) },
    vscode.commands.registerCommand('nclanguage.openSetup', open),
    vscode.window.onDidChangeActiveTextEditor(refresh),
    vscode.workspace.onDidChangeTextDocument(({ document }) => isJobFile(document.uri) && refresh()),
    // The findings come anew whenever the program is checked with another setup.
    vscode.languages.onDidChangeDiagnostics(({ uris }) => uris.some((uri) => isJobFile(uri) || uri.path === shown()?.uri.path) && refresh()),
    ...watchers,
    ...watchers.flatMap((watcher) => [watcher.onDidCreate(refresh), watcher.onDidChange(refresh), watcher.onDidDelete(refresh)]),
  );
  return { disposable, refresh };
}

module.exports = { createSetupStatus, describe };
