using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>Block numbers that fall.</summary>
public sealed class NumberOrder : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6002",
        Name = "number-order",
        Severity = Severity.Note,
        Title = "The block numbers fall",
        Finds = "The first N word of a program that is lower than the one before it. A number that stands in the program already is number-repeated.",
        AtTheMachine =
            "Nothing while the program runs through. But whoever looks for a block by its number, or starts from it, looks in the wrong place; a block that "
            + "was moved or pasted shows itself so.",
        Example = """
            N10 G21 G90 G17 G54
            N20 G0 X0 Y0
            N5 X20 Y30
            ~^
            N30 M30
            """,
        Instead = """
            N10 G21 G90 G17 G54
            N20 G0 X0 Y0
            N25 X20 Y30
            N30 M30
            """,
        FixSafety = FixSafety.Choice,
        Fix =
            "Gives the block a number between its neighbours, where there is room. None is offered in a program with jumps (GOTO, M99 P), which may be meant for it.",
        NotFound = "Further falls behind the first, until that is put right. Numbers that are out of order on purpose, as in a program put together from parts.",
        Source = "NISTIR 6556 §3.3.1 allows any order; rising numbers are common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (BlockNumbering.Rises(file.Run))
            return;
        var used = new HashSet<int>();
        var (last, lastLine, isTold) = (-1, -1, false);
        for (var chunk = 0; chunk < file.Run.Texts.Length; chunk++)
        {
            var offset = file.Run.Text.FirstLineOf(chunk);
            foreach (var (number, inChunk) in file.Run.Texts[chunk].Numbers)
            {
                if (number < 0)
                {
                    used.Clear();
                    (last, isTold) = (-1, false);
                    continue;
                }
                if (used.Add(number) && number < last && !isTold)
                {
                    Report(file, offset + inChunk, number, lastLine, last);
                    isTold = true;
                }
                (last, lastLine) = (number, offset + inChunk);
            }
        }
    }

    void Report(in FileContext file, int line, int number, int lastLine, int last)
    {
        var here = BlockNumbering.NumberToken(file.Run.BlockAt(line));
        var there = BlockNumbering.NumberToken(file.Run.BlockAt(lastLine));
        file.Report(this, line, here.Start, here.End, $"N{number} comes after N{last}: the block numbers fall here.",
            related: new RelatedPlace(lastLine, there.Start, there.End, $"N{last} stands here."));
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        return analysis.Main.FreeNumbers is var numbers && numbers.Rising(finding.Line) is { } free && free <= BlockNumbering.Greatest && !numbers.HasJumps
            ? [new Fix($"Number this block N{free}", FixSafety.Choice, [BlockNumbering.Renumber(analysis.Main, finding.Line, free)])]
            : [];
    }
}
