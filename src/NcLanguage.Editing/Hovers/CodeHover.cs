using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a G or M code does: from the table of codes, and for a cycle also what this block will do.</summary>
static class CodeHover
{
    public static string? Of(ProgramAnalysis analysis, int line, in Token token, string written)
    {
        var tenths = Math.Round(token.Value * 10);
        if (double.IsNaN(tenths) || tenths is < 0 or > 9999)
            return null;
        if (CodeTable.Find((char)token.Letter, (int)tenths) is not { } code)
            return null;
        var text = new StringBuilder();
        text.Append("**").Append(code.Text).Append(' ').Append(code.Name).Append("**");
        if (written.Replace(" ", "", StringComparison.Ordinal).Length > code.Text.Length + 1)
            text.Append(" (").Append(written).Append(')');
        text.Append("\n\n").Append(code.Meaning).Append(code.IsModal ? " It stays in force until another code of its group." : " It acts in its own block only.");
        AppendWords(text, code);
        if (code.Group == ModalGroup.Cycle && code.Tenths != 800)
            text.Append("\n\n").Append(BlockHover.Text(analysis, line));
        return text.Append("\n\nSource: ").Append(code.Source).ToString();
    }

    static void AppendWords(StringBuilder text, CodeEntry code)
    {
        if (code.Words.IsEmpty)
            return;
        text.Append("\n\n");
        foreach (var use in code.Words)
        {
            text.Append("- `").Append(use.Letter).Append("` ").Append(use.Meaning).Append(use.Need switch
            {
                WordNeed.Required => " (needed)",
                WordNeed.CarriedOver => " (needed once, then carried over)",
                _ => "",
            }).Append('\n');
        }
    }
}
