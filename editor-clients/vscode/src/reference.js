// Shows the page of a finding's rule as it is meant to be read: a link to a file would open its bare text.
// Nothing is known here about the pages: the server names them, and the editor's own Markdown preview shows them.
const command = 'nclanguage.showReference';

/**
 * Puts links to the preview in the place of links to files.
 * @param {{ code?: unknown }[]} diagnostics as the language client made them; changed in place
 * @param {Map<string, unknown>} pages the page of each code, kept for the command
 * @param {(code: string) => unknown} linkTo makes the address of the command for a code
 */
function linkToPreview(diagnostics, pages, linkTo) {
  for (const diagnostic of diagnostics) {
    const { value, target } = diagnostic.code ?? {};
    if (target?.scheme !== 'file') continue;
    pages.set(String(value), target);
    diagnostic.code = { value, target: linkTo(String(value)) };
  }
  return diagnostics;
}

/** The command and the client's middleware that go with it. */
function createReference(vscode) {
  const pages = new Map();
  const linkTo = (code) => vscode.Uri.from({ scheme: 'command', path: command, query: JSON.stringify([code]) });
  const inReport = (report) => {
    if (report?.kind === 'full') linkToPreview(report.items, pages, linkTo);
    return report;
  };
  return {
    // Findings come unasked for setup files, and for programs when the editor asks.
    middleware: {
      handleDiagnostics: (uri, diagnostics, next) => next(uri, linkToPreview(diagnostics, pages, linkTo)),
      provideDiagnostics: async (document, previousResultId, token, next) => inReport(await next(document, previousResultId, token)),
      provideWorkspaceDiagnostics: (resultIds, token, reporter, next) =>
        next(resultIds, token, (chunk) => {
          chunk?.items.forEach(inReport);
          reporter(chunk);
        }),
    },
    command: vscode.commands.registerCommand(command, (code) => {
      const page = pages.get(code);
      return page && vscode.commands.executeCommand('markdown.showPreview', page);
    }),
  };
}

module.exports = { createReference, linkToPreview };
