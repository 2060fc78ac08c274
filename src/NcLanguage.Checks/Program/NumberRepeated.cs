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
        Finds = "An N word whose number another block above it has, in the same program of the file.",
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
        Fix = "Gives the block a number that is free, between its neighbours where there is room. A jump that was meant for it must be changed by hand.",
        NotFound = "Numbers that are repeated in different programs of one file, which is sound.",
        Source = "NISTIR 6556 §3.3.1 allows repeats; that a search finds the first is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (!BlockNumbering.Rises(file.Run))
            CheckAll(file);
    }

    void CheckAll(in FileContext file)
    {
        var first = new Dictionary<int, int>();
        for (var chunk = 0; chunk < file.Run.Texts.Length; chunk++)
        {
            var offset = file.Run.Text.FirstLineOf(chunk);
            foreach (var (number, line) in file.Run.Texts[chunk].Numbers)
            {
                if (number < 0)
                    first.Clear();
                else if (!first.TryAdd(number, offset + line))
                    Report(file, number, offset + line, first[number]);
            }
        }
    }

    void Report(in FileContext file, int number, int line, int firstLine)
    {
        var here = BlockNumbering.NumberToken(file.Run.BlockAt(line));
        var there = BlockNumbering.NumberToken(file.Run.BlockAt(firstLine));
        file.Report(this, line, here.Start, here.End, $"N{number} stands already on line {firstLine + 1}: a search or a jump to it stops there.",
            value: number, related: new RelatedPlace(firstLine, there.Start, there.End, $"N{number} stands here first."));
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var free = analysis.Main.FreeNumbers.Nearest(finding.Line);
        return free > BlockNumbering.Greatest
            ? []
            : [new Fix($"Number this block N{free}", FixSafety.Choice, [BlockNumbering.Renumber(analysis.Main, finding.Line, free)])];
    }
}
