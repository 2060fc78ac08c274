// Starts and stops the language server. Whatever is known about NC programs lives in the server.
const vscode = require('vscode');
const { LanguageClient, TransportKind } = require('vscode-languageclient/node');
const { createMotionView } = require('./motion-view');
const { createInHand } = require('./in-hand');
const { isJobFile, patterns } = require('./job-files');
const { createReference } = require('./reference');
const { findServer } = require('./server-path');
const { createSetupStatus } = require('./setup-status');

/** @type {LanguageClient | undefined} */
let client;
/** @type {vscode.OutputChannel} */
let output;
/** @type {ReturnType<typeof createReference>} */
let reference;
/** @type {ReturnType<typeof createSetupStatus>} */
let status;
/** Starts and stops run one after the other, so that two servers never run at once. */
let queue = Promise.resolve();

/** Says what is wrong, with a button to the setting that mends it. */
function tell(problem) {
  output.appendLine(problem);
  const button = 'Open Setting';
  // Where the server runs elsewhere (a remote window), a setting of machine scope stands among that machine's.
  const page = vscode.env.remoteName ? 'workbench.action.openRemoteSettings' : 'workbench.action.openSettings';
  // Not awaited: the message may stand for hours, and a changed setting must start the server meanwhile.
  void vscode.window.showErrorMessage(problem, button).then((choice) => {
    if (choice === button) void vscode.commands.executeCommand(page, { query: 'nclanguage.serverPath' });
  });
}

async function start(context) {
  const configured = vscode.workspace.getConfiguration('nclanguage').get('serverPath', '').trim();
  const found = findServer(configured, context.extensionPath);
  if ('problem' in found) {
    tell(`${found.problem} Programs are coloured but not checked.`);
    return;
  }
  output.appendLine(`Starting ${found.path} serve`);
  const next = new LanguageClient(
    'nclanguage',
    'NcLanguage',
    { command: found.path, args: ['serve'], transport: TransportKind.stdio },
    {
      documentSelector: [
        { scheme: 'file', language: 'nc' },
        { scheme: 'untitled', language: 'nc' },
        // By name, not as jsonc: no other file of that language is the server's business. They take in nc.setup.json.
        ...patterns.map((pattern) => ({ scheme: 'file', pattern })),
      ],
      middleware: {
        ...reference.middleware,
        // The editor's own JSON service completes and explains setup files, by the schemas that come with the extension.
        provideHover: (document, position, token, next) => (document.languageId === 'nc' ? next(document, position, token) : undefined),
        provideCompletionItem: (document, position, context, token, next) =>
          document.languageId === 'nc' ? next(document, position, context, token) : undefined,
      },
      synchronize: { configurationSection: 'nclanguage' },
      outputChannel: output,
      traceOutputChannel: output,
    },
  );
  try {
    await next.start();
    client = next;
    status.refresh();
  } catch (error) {
    // What is left of it may itself fail to end; there is nothing more to say then.
    next.dispose().catch(() => {});
    tell(`NcLanguage could not start "${found.path}": ${error?.message ?? error}`);
  }
}

async function stop() {
  const running = client;
  client = undefined;
  status.refresh();
  await running?.dispose();
}

function restart(context) {
  queue = queue.then(stop).then(() => start(context));
  return queue;
}

/** A program, or a file that belongs to one. */
function isOurs(document) {
  return document.languageId === 'nc' || isJobFile(document.uri);
}

/** Starts once there is something to check: any other file in JSON with comments wakes the extension too. */
function startWhenNeeded(context) {
  if (vscode.workspace.textDocuments.some(isOurs)) return restart(context);
  const waiting = vscode.workspace.onDidOpenTextDocument((document) => {
    if (!isOurs(document)) return;
    waiting.dispose();
    void restart(context);
  });
  context.subscriptions.push(waiting);
  return undefined;
}

function activate(context) {
  output = vscode.window.createOutputChannel('NcLanguage');
  reference = createReference(vscode);
  const inHand = createInHand(vscode);
  status = createSetupStatus(vscode, () => client, inHand);
  context.subscriptions.push(
    output,
    inHand.disposable,
    status.disposable,
    reference.command,
    createMotionView(vscode, () => client, inHand),
    vscode.commands.registerCommand('nclanguage.restart', () => restart(context)),
    vscode.commands.registerCommand('nclanguage.showOutput', () => output.show()),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration('nclanguage.serverPath')) void restart(context);
    }),
  );
  return startWhenNeeded(context);
}

function deactivate() {
  queue = queue.then(stop);
  return queue;
}

module.exports = { activate, deactivate };
