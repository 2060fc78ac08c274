using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

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
        var greatest = -1;
        for (var chunk = 0; chunk < file.Run.Results.Length; chunk++)
        {
            var range = file.Run.Results[chunk].NumberRange;
            if (!range.Rises || (range.Least >= 0 && range.Least <= greatest))
            {
                CheckAll(file);
                return;
            }
            greatest = Math.Max(greatest, range.Greatest);
        }
    }

    void CheckAll(in FileContext file)
    {
        var first = new Dictionary<int, int>();
        for (var chunk = 0; chunk < file.Run.Results.Length; chunk++)
        {
            var offset = file.Run.Text.FirstLineOf(chunk);
            foreach (var (number, line) in file.Run.Results[chunk].Numbers)
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
        var here = NumberToken(file.Run.BlockAt(line));
        var there = NumberToken(file.Run.BlockAt(firstLine));
        file.Report(this, line, here.Start, here.End, $"N{number} stands already on line {firstLine + 1}: a search or a jump to it stops there.",
            value: number, related: new RelatedPlace(firstLine, there.Start, there.End, $"N{number} stands here first."));
    }

    static Token NumberToken(in Block block) => block.Tokens[block.IndexOf('N')];

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var (used, before, after) = Neighbours(analysis.Main, finding.Line);
        var free = Free(used, before, after);
        if (free > BlockNumbering.Greatest)
            return [];
        var block = analysis.Main.BlockAt(finding.Line);
        var token = NumberToken(block);
        var digits = token.End - token.ValueStart;
        var text = Encoding.ASCII.GetString(block.Line[token.Start..token.ValueStart]) + BlockNumbering.Digits(free, digits, block.Line[token.ValueStart] == '0');
        return [new Fix($"Number this block N{free}", FixSafety.Choice, [new Edit(finding.Line, token.Start, token.End, text)])];
    }

    /// <summary>The numbers of the line's own program, and those of the numbered blocks just before and after it; −1 where there is none.</summary>
    static (HashSet<int> Used, int Before, int After) Neighbours(ProgramRun run, int atLine)
    {
        var used = new HashSet<int>();
        var (before, after) = (-1, -1);
        for (var chunk = 0; chunk < run.Results.Length; chunk++)
        {
            var offset = run.Text.FirstLineOf(chunk);
            foreach (var (number, line) in run.Results[chunk].Numbers)
            {
                if (number < 0)
                {
                    if (offset + line > atLine)
                        return (used, before, after);
                    used.Clear();
                    before = -1;
                    continue;
                }
                used.Add(number);
                if (offset + line < atLine)
                    before = number;
                else if (offset + line > atLine && after < 0)
                    after = number;
            }
        }
        return (used, before, after);
    }

    static int Free(HashSet<int> used, int before, int after)
    {
        for (var number = before + (after - before + 1) / 2; number > before && number < after; number++)
            if (!used.Contains(number))
                return number;
        for (var number = before + 1; number < after; number++)
            if (!used.Contains(number))
                return number;
        return used.Max() / 10 * 10 + 10;
    }
}
