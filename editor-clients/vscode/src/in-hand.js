// What a command is about: what is in hand, else the program that was in hand last, as a page such as the walkthrough takes its place.
const { isSetup } = require('./job-files');

/** @param {typeof import('vscode')} vscode */
function createInHand(vscode) {
  /** @type {import('vscode').TextDocument | undefined} */
  let last;
  const isProgram = (document) => document?.languageId === 'nc';
  const note = (editor) => {
    if (isProgram(editor?.document)) last = editor.document;
  };
  note(vscode.window.activeTextEditor);

  /** The program; undefined where none is open. */
  const program = () => {
    note(vscode.window.activeTextEditor);
    return last && !last.isClosed ? last : vscode.workspace.textDocuments.find((document) => isProgram(document) && !document.isClosed);
  };

  /** The program or setup file; without any, the user is told. */
  const document = () => {
    const active = vscode.window.activeTextEditor?.document;
    const found = active && isSetup(active.uri) ? active : program();
    if (!found) void vscode.window.showInformationMessage('Open a program first.');
    return found;
  };

  return { program, document, disposable: vscode.window.onDidChangeActiveTextEditor(note) };
}

module.exports = { createInHand };
