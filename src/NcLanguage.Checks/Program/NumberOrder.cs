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
        foreach (var fall in file.Run.NumberSurvey.Falls)
        {
            var (here, there) = (BlockNumbering.NumberToken(file.Run.BlockAt(fall.Line)), BlockNumbering.NumberToken(file.Run.BlockAt(fall.LastLine)));
            file.Report(this, fall.Line, here.Start, here.End, $"N{fall.Number} comes after N{fall.Last}: the block numbers fall here.",
                related: new RelatedPlace(fall.LastLine, there.Start, there.End, $"N{fall.Last} stands here."));
        }
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
