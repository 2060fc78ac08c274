using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Editing.Formatting;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Puts blocks that a program holds more than once alike into a subprogram, and calls it there: the longest such stretch, or the lines marked.</summary>
sealed class LiftBlocks : Refactoring
{
    public override string Name => "liftBlocks";

    public override string Kind => "refactor.extract";

    public override Reach Reach => Reach.Lines;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        if (analysis.Text.LineCount > RepeatedLines.MostLines)
            return null;
        if (Find(analysis, lines) is not { } found)
            return null;
        return $"Lift {found.Length} blocks that stand here {(found.Starts.Count == 2 ? "twice" : $"{found.Starts.Count} times")} into a subprogram";
    }

    static RepeatedLines? Find(ProgramAnalysis analysis, Lines lines)
    {
        var region = (analysis.Main.Flow?.Text ?? FlowText.Of(analysis.Text, null)).LinesOfProgramAt(lines.First);
        return RepeatedLines.Find(analysis.Text, region, lines);
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        var found = Find(analysis, lines)!;
        if (FreeNumber(analysis) is not { } number)
            return Draft.Refuse("No program number is free below 10000.");
        var draft = new Draft(text);
        var style = WordNumber.Of(text, analysis.Machine.Readings);
        foreach (var start in found.Starts)
        {
            var block = text.BlockAt(start);
            var own = block.NumberIndex is >= 0 and var at ? block.StringOf(block.Tokens[at]) + " " : "";
            draft.ReplaceLines(start, start + found.Length - 1, [$"{own}{style.Code("M98")} {style.Letter('P')}{number}"]);
        }
        List<string> written = ["", $"{style.Letter('O')}{number} (REPEATED BLOCKS)"];
        for (var line = found.Starts[0]; line < found.Starts[0] + found.Length; line++)
            written.Add(RepeatedLines.WithoutNumber(text.BlockAt(line)));
        written.Add(style.Code("M99"));
        Append(draft, text, written);
        return draft;
    }

    /// <summary>Behind all else, but before the % that closes the file.</summary>
    static void Append(Draft draft, SourceText text, List<string> written)
    {
        var line = text.LineCount - 1;
        while (line > 0 && text.Line(line).IsEmpty)
            line--;
        var block = text.BlockAt(line);
        if (block.Tokens.Length > 0 && block.Tokens[0].Kind == TokenKind.Percent && line > 0)
            draft.InsertBefore(line, written);
        else
            draft.InsertBehind(line, string.Join(LineEnding.Of(text, line), written));
    }

    /// <summary>The next number behind the program's own that neither the file nor one beside it has.</summary>
    static int? FreeNumber(ProgramAnalysis analysis)
    {
        var taken = new HashSet<int>();
        var first = 0;
        for (var line = 0; line < analysis.Text.LineCount; line++)
        {
            foreach (ref readonly var token in analysis.Text.BlockAt(line).Tokens)
            {
                if (!(token.IsWord('O') || token.IsWord(':') || token.IsWord('P')) || !(token.Value is >= 0 and < int.MaxValue))
                    continue;
                taken.Add((int)token.Value);
                if (first == 0 && !token.IsWord('P'))
                    first = (int)token.Value;
            }
        }
        for (var number = Math.Max(first, 1000) + 1; number < 10000; number++)
            if (!taken.Contains(number) && analysis.Main.Job.Programs is var beside && beside?.Find(number) is null && beside?.WhyNotRead(number) is null)
                return number;
        return null;
    }
}
