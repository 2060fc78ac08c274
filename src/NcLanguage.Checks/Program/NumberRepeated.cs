using System.Globalization;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>A block number that stands twice in one program.</summary>
public sealed class NumberRepeated : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6001",
        Name = "number-repeated",
        Severity = Severity.Warning,
        Title = "A block number stands twice in one program",
        Finds = "An N word whose number another block above it has, in the same program of the file. A stretch of such numbers that rise is told once.",
        AtTheMachine = "Nothing while the program runs through; but a search for the block, a restart or a jump finds the first of the two.",
        Example = """
            N10 G21 G90 G17 G54
            N20 G0 X0 Y0
            N20 X20 Y30
            ~^^
            N30 M30
            """,
        Instead = """
            N10 G21 G90 G17 G54
            N20 G0 X0 Y0
            N25 X20 Y30
            N30 M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Gives the block a number that is free, between its neighbours where there is room. A jump that was meant for it must be changed by hand. For a stretch of repeated numbers none is offered: number the program anew.",
        NotFound = "Numbers that are repeated in different programs of one file, which is sound.",
        Source = "NISTIR 6556 §3.3.1 allows repeats; that a search finds the first is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        foreach (var repeat in file.Run.NumberSurvey.Repeats)
        {
            var (here, there) = (BlockNumbering.NumberToken(file.Run.BlockAt(repeat.Line)), BlockNumbering.NumberToken(file.Run.BlockAt(repeat.FirstLine)));
            var first = new RelatedPlace(repeat.FirstLine, there.Start, there.End, $"N{repeat.Number} stands here first.");
            file.Report(this, repeat.Line, here.Start, here.End, Describe(repeat), value: repeat.Number, text: repeat.Count == 1 ? "" : Several, related: first);
        }
    }

    const string Several = "several";

    static string Describe(in RepeatedNumbers repeat) => repeat.Count == 1
        ? $"N{repeat.Number} stands already on line {repeat.FirstLine + 1}: a search or a jump to it stops there."
        : string.Create(CultureInfo.InvariantCulture,
            $"N{repeat.Number}, and {(repeat.Count == 2 ? "the block number" : $"{repeat.Count - 1:N0} block numbers")} behind it, stand already further up, N{repeat.Number} on line {repeat.FirstLine + 1}: a search or a jump to one of them stops there.");

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        // One number does not mend a stretch of them; all of a program are numbered anew by a refactoring.
        if (finding.Text == Several)
            return [];
        var free = analysis.Main.FreeNumbers.Nearest(finding.Line);
        return free > BlockNumbering.Greatest
            ? []
            : [new Fix($"Number this block N{free}", FixSafety.Choice, [BlockNumbering.Renumber(analysis.Main, finding.Line, free)])];
    }
}
