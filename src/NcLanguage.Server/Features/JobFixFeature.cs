using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/codeAction in a setup or machine file: the name or value that was probably meant. None is preferred, for each is a guess.</summary>
sealed class JobFixFeature(ClientProfile client, PositionMapper positions, JobDiagnostics diagnostics)
{
    public CodeAction[] Answer(JobDocument document, TextRange range, string[]? only)
    {
        if (!CodeActionFeature.IsWanted(CodeActionFeature.QuickFix, only))
            return [];
        var (first, last) = positions.ToLines(document.Text, range);
        return
        [
            .. from problem in document.Problems
               where problem.Replacement is not null && problem.Line - 1 <= last && problem.EndLine - 1 >= first
               let diagnostic = diagnostics.Map(problem, document.Text)
               let edit = new TextEdit(diagnostic.Range, problem.Replacement!)
               select new CodeAction(
                   ShownText.Of($"Write {problem.Replacement}"), CodeActionFeature.QuickFix, [diagnostic],
                   Edit: CodeActionFeature.ToEdit(client, document.Uri, document.Version, [edit])),
        ];
    }
}
