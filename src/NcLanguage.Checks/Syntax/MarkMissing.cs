using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>The % or the program number that the control needs to load a file.</summary>
public sealed class MarkMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1013",
        Name = "mark-missing",
        Severity = Severity.Warning,
        Title = "The file lacks the mark the control loads it by",
        Finds = "Where the machine profile asks for them: a first and a last line with %, and a program number (O or :) before the first block.",
        AtTheMachine = "The control does not take the file: the transfer waits for the % that never comes, or the program is stored nowhere.",
        Example = """
            %
            O12
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            ~^^
            """,
        Instead = """
            %
            O12
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            %
            """,
        Machine = """
            { "base": "iso-mill", "readings": { "programMarks": { "percent": true, "number": true } } }
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Adds the line with %, which says nothing about the motion. A program number it can only propose: which one is free is known at the control.",
        NotFound = "Marks that a transfer program adds on the way.",
        Source = "NISTIR 6556 §3.3 (percent lines); program numbers: common practice; the profile's programMarks.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var marks = file.Run.Job.Readings.ProgramMarks;
        if (!marks.Percent && !marks.Number)
            return;
        var first = Next(file.Run, file.Run.LeaderLines, 1, static (in Block _) => true);
        if (first < 0)
            return;
        if (marks.Percent && !IsPercent(file.Run.BlockAt(first)))
            file.ReportBlock(this, first, "This control takes only files that begin with a line with %.", text: "first");
        var block = Next(file.Run, first, 1, SaysSomething);
        if (marks.Number && block >= 0 && file.Run.BlockAt(block).ProgramNumberIndex < 0)
            file.ReportBlock(this, block, "This control needs a program number, such as O1, before the first block.", text: "number");
        var last = Next(file.Run, file.Run.Text.LineCount - 1, -1, static (in Block _) => true);
        if (marks.Percent && !IsPercent(file.Run.BlockAt(last)))
            file.ReportBlock(this, last, "This control takes only files that end with a line with %: the transfer waits for it.", text: "last");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var lineEnd = Inserts.LineEnd(analysis.Text);
        if (finding.Text == "last")
            return [new Fix("Add % behind the last block", FixSafety.Safe, [Inserts.AfterLine(analysis.Text, finding.Line, "%")])];
        return finding.Text == "first"
            ? [new Fix("Add % before the first block", FixSafety.Safe, [new Edit(finding.Line, 0, 0, "%" + lineEnd)])]
            : [new Fix("Add a program number", FixSafety.Choice, [new Edit(finding.Line, 0, 0, "O1" + lineEnd)])];
    }

    delegate bool Ask(in Block block);

    /// <summary>Whether anything but comments and a skip mark stands in a block, be it behind one; what stands behind a % on its line never runs.</summary>
    static bool SaysSomething(in Block block)
    {
        if (IsPercent(block))
            return false;
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind is not (TokenKind.Comment or TokenKind.LineComment or TokenKind.Skip))
                return true;
        return false;
    }

    /// <summary>The next line from <paramref name="line"/> on whose block is one of those asked for; −1 where there is none.</summary>
    static int Next(ProgramRun run, int line, int direction, Ask isOne)
    {
        for (; line >= 0 && line < run.Text.LineCount; line += direction)
        {
            var block = run.BlockAt(line);
            if (block.Tokens.Length > 0 && isOne(block))
                return line;
        }
        return -1;
    }

    static bool IsPercent(in Block block) => block.Tokens[0].Kind == TokenKind.Percent;
}
