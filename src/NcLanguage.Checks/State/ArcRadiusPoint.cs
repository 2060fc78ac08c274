using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>An arc whose R has its decimal point in the wrong place.</summary>
public sealed class ArcRadiusPoint : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2041",
        Name = "arc-radius-point",
        Severity = Severity.Warning,
        Title = "The radius of an arc is ten times the one that would fit",
        Finds = "An arc in the XY plane by R between two cuts of a contour that it meets at corners, and that would run smoothly into both if R were 10, 100 or 1000 times smaller.",
        AtTheMachine = "Instead of a round corner the tool cuts one that is almost straight, with an edge at either end.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            S2000 M3
            G0 X-20 Y0
            G43 H3 Z-5 M8
            G1 X50 F300
            G3 X60 Y10 R100
            ~^^^^^^^^^^^^^^
            G1 Y40
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S2000 M3
            G0 X-20 Y0
            G43 H3 Z-5 M8
            G1 X50 F300
            G3 X60 Y10 R10
            G1 Y40
            G0 Z50 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Moves the point in R. A choice, since a corner may be meant that is only a little round.",
        NotFound = "Other wrong radii; arcs at the beginning or end of a contour; radii too small for their ends (arc-impossible), and arcs by I and J (arc-radius-mismatch).",
        Source = "A tangent arc leaves its chord at both ends by the same angle, and its radius is the chord by twice the sine of that (plane geometry); that points are misplaced: common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        foreach (var (line, arc) in file.Run.TurnedArcs)
            if (arc.Tenfold > 0 && WordOf(file.Run, line) is { } word)
                file.ReportBlock(this, line, $"With {word} this arc meets the moves before and behind it at corners; with {Smaller(file.Run, line, arc.Tenfold)} it would run smoothly into both.", value: arc.Tenfold);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var smaller = Smaller(analysis.Main, finding.Line, (int)finding.Value);
        return [new Fix($"Write {smaller}", FixSafety.Choice, [CycleWords.Set(analysis.Main, finding.Line, smaller)])];
    }

    /// <summary>The R word as it is written; null where an expression gives it.</summary>
    static string? WordOf(ProgramRun run, int line) =>
        run.BlockAt(line) is var block && block.IndexOf('R') is >= 0 and var token && !block.Tokens[token].IsExpression ? Quote.Word(block, block.Tokens[token]) : null;

    static string Smaller(ProgramRun run, int line, int times)
    {
        var block = run.BlockAt(line);
        ref readonly var token = ref block.Tokens[block.IndexOf('R')];
        var number = Say.Number(token.Value / times, 6);
        return "R" + (token.HasPoint ? Say.WithPoint(number) : number);
    }
}
