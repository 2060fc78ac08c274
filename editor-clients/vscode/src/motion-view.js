// The motion view beside the program. The page comes from the server; here it is only shown, and lines go back and forth.
const { randomBytes } = require('node:crypto');
const { isJobFile } = require('./job-files');

/** Milliseconds without a key before the page is made anew. */
const rest = 400;

/** Errors of the protocol: the document was changed meanwhile; the server says in a sentence for the user why it has no page. */
const [superseded, refused] = [-32801, -32803];
const unmade = 'The motion view could not be made. The output panel says why.';

const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/**
 * @param {typeof import('vscode')} vscode
 * @param {() => import('vscode-languageclient/node').LanguageClient | undefined} getClient
 * @param {ReturnType<import('./in-hand').createInHand>} inHand
 */
function createMotionView(vscode, getClient, inHand) {
  /** @type {Map<string, { panel: import('vscode').WebviewPanel, program: string, draw: () => Promise<void>, line: number, timer?: NodeJS.Timeout }>} */
  const open = new Map();

  function isLight() {
    const { Light, HighContrastLight } = vscode.ColorThemeKind;
    return [Light, HighContrastLight].includes(vscode.window.activeColorTheme.kind);
  }

  function editorOf(uri) {
    return vscode.window.visibleTextEditors.find((editor) => editor.document.uri.toString() === uri);
  }

  function show(document) {
    const uri = document.uri.toString();
    const there = open.get(uri);
    if (there) return there.panel.reveal(undefined, true);
    const name = document.uri.path.split('/').pop();
    const panel = vscode.window.createWebviewPanel(
      'nclanguage.motionView',
      `Motion: ${name}`,
      { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, localResourceRoots: [], retainContextWhenHidden: true },
    );
    // Where a setup file is what the user looks at, the server says which program it is for.
    const view = { panel, program: uri, line: editorOf(uri)?.selection.active.line ?? 0, draw };
    open.set(uri, view);

    async function draw() {
      const client = getClient();
      if (!client) return;
      try {
        const { html, uri: program } = await client.sendRequest('nclanguage/motionView', { textDocument: { uri }, nonce: randomBytes(16).toString('base64') });
        view.program = program;
        // A browser's own choice of light or dark is not the editor's.
        panel.webview.html = html.replace('<html', `<html data-theme="${isLight() ? 'light' : 'dark'}"`);
      } catch (error) {
        // Superseded by the next key: the page is asked for again then.
        if (error?.code !== superseded) panel.webview.html = `<!DOCTYPE html><p>${escaped(error?.code === refused ? error.message : unmade)}</p>`;
      }
    }

    panel.webview.onDidReceiveMessage((message) => {
      if (message?.ready) return panel.webview.postMessage({ line: view.line });
      if (!Number.isInteger(message?.line) || message.file) return undefined;
      view.line = message.line;
      const editor = editorOf(view.program);
      if (!editor || editor.selection.active.line === message.line) return undefined;
      const place = new vscode.Position(message.line, 0);
      editor.selection = new vscode.Selection(place, place);
      editor.revealRange(new vscode.Range(place, place), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
      return undefined;
    });
    panel.onDidDispose(() => {
      clearTimeout(view.timer);
      open.delete(uri);
    });
    return draw();
  }

  /** Makes pages anew once typing rests: that of one program, or all where a setup or machine file was saved. */
  function changed(uri) {
    for (const [own, view] of open) {
      if (uri && own !== uri && view.program !== uri) continue;
      clearTimeout(view.timer);
      view.timer = setTimeout(() => void view.draw(), rest);
    }
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand('nclanguage.motionView', () => {
      const document = inHand.document();
      return document && show(document);
    }),
    vscode.commands.registerCommand('nclanguage.setupSheet', () => {
      const document = inHand.document();
      return document && getClient()
        ?.sendRequest('workspace/executeCommand', { command: 'nclanguage.openSetupSheet', arguments: [document.uri.toString()] })
        .catch((error) => void vscode.window.showErrorMessage(error.message));
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor, selections, kind }) => {
      const uri = textEditor.document.uri.toString();
      const view = open.get(uri) ?? [...open.values()].find(({ program }) => program === uri);
      // What the page itself has set comes without a kind.
      if (!view || kind === undefined) return;
      view.line = selections[0].active.line;
      void view.panel.webview.postMessage({ line: view.line });
    }),
    vscode.window.onDidChangeActiveColorTheme(() => changed()),
    vscode.workspace.onDidChangeTextDocument(({ document }) => changed(document.uri.toString())),
    vscode.workspace.onDidSaveTextDocument((document) => {
      if (isJobFile(document.uri)) changed();
    }),
  );
}

module.exports = { createMotionView };
