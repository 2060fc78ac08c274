using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A program that stops without a word that ends it.</summary>
public sealed class ProgramEndMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6003",
        Name = "program-end-missing",
        Severity = Severity.Error,
        Title = "The program has no end",
        Finds = "No M2, M30 or M99 before the end of the file, the closing % or the next program of the file.",
        AtTheMachine = "The control reads on past the last block: it stops with an alarm, or waits with spindle and coolant running for more blocks.",
        Example = """
            N10 G21 G90 G17 G54
            N20 G0 X0 Y0
            N30 X20 Y30
            ~   ^^^^^^^
            """,
        Instead = """
            N10 G21 G90 G17 G54
            N20 G0 X0 Y0
            N30 X20 Y30
            N40 M30
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Adds a line with M30 after the last block, numbered as the blocks before it are; before it G80, M9 and M5 for what is still on. With M99 where the file is there to be called: it returns elsewhere and names no tool.",
        NotFound = "A called program of the same file that does not return: that is subprogram-return-missing. An end that a jump passes by.",
        Source = "ISO 6983-1 (from memory): a program ends with M02 or M30; NISTIR 6556 §3.1 asks for one where no % closes the file.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (!DoesAnything(run))
            return;
        var next = NextProgram(run);
        var last = LastWords(run, next - 1);
        if (last < 0 || run.Flow is { End: not FlowEnd.OffTheEnd })
            return;
        var state = HasBlockBehind(run, last) ? run.StateBefore(last + 1) : run.Exit;
        if (state.Ended && run.Flow is null)
            return;
        file.ReportBlock(this, last, next < run.Text.LineCount
            ? $"Nothing ends the program before the next one begins on line {next + 1}: the control reads on into it."
            : state.IsCalled ? "Nothing ends the program here: without M99 the control does not go back to the call."
            : "Nothing ends the program here: without M30 the control runs past its last block.");
    }

    /// <summary>Whether the number of the program on a line has other words before it.</summary>
    static bool IsWithinBlock(ProgramRun run, int line)
    {
        if (line >= run.Text.LineCount)
            return false;
        foreach (ref readonly var token in run.BlockAt(line).Tokens)
        {
            if (token.IsWord('O') || token.IsWord(':'))
                return false;
            if (token.Kind == TokenKind.Word && !token.IsWord('N'))
                return true;
        }
        return false;
    }

    static bool HasBlockBehind(ProgramRun run, int line)
    {
        for (line++; line < run.Text.LineCount; line++)
            if (run.BlockAt(line).Tokens.Length > 0)
                return true;
        return false;
    }

    static bool DoesAnything(ProgramRun run)
    {
        foreach (var result in run.Results)
            if (result.AllSets != Slot.None)
                return true;
        return false;
    }

    /// <summary>The line on which the next program begins behind the one that has no end; the number of lines where none does. A run that goes on behind an end has got there by the way of an
    /// open condition or loop: what misses its end then stands behind.</summary>
    static int NextProgram(ProgramRun run)
    {
        for (var chunk = 0; chunk < run.Texts.Length; chunk++)
        {
            var result = run.Texts[chunk];
            if (!result.NumberRange.BeginsProgram)
                continue;
            foreach (var (number, inChunk) in result.Numbers)
            {
                var line = run.Text.FirstLineOf(chunk) + inChunk;
                if (number < 0 && !run.BlockAt(line).HasStatement && LastWords(run, line - 1) is >= 0 and var last && !(run.Flow is not null && Ends(run.BlockAt(last))))
                    return line;
            }
        }
        return run.Text.LineCount;
    }

    static bool Ends(in Block block) => WordEdits.IndexOfCode(block, 'M', 2) >= 0 || WordEdits.IndexOfCode(block, 'M', 30) >= 0 || WordEdits.IndexOfCode(block, 'M', 99) >= 0;

    /// <summary>The last line, up to and with <paramref name="line"/>, of a program that holds words other than a program or block number; −1 where there is none.</summary>
    static int LastWords(ProgramRun run, int line)
    {
        var first = run.LeaderLines;
        for (; line >= first; line--)
            if (run.BlockAt(line) is { HasWords: true } block && block.Tokens[0].Kind != TokenKind.Percent)
                return line;
        return -1;
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var run = analysis.Main;
        // Where the last block ends something else already, what the run lacks is not a block behind it. An O among other words is more likely a slip than a program's beginning.
        if (Ends(run.BlockAt(finding.Line)) || IsWithinBlock(run, NextProgram(run)))
            return [];
        var after = run.StepAt(finding.Line).After;
        var words = after.IsCalled ? "M99" : StillOn(after) + "M30";
        return [new Fix($"Add {words}", FixSafety.Safe, [NumberAlone(run, finding.Line) is { } free
            ? Inserts.Behind(analysis, free, words)
            : WordEdits.BlockBehind(run.Text, finding.Line, BlockNumbering.NumberAfter(run, finding.Line) + words)])];
    }

    /// <summary>The words that end what is on, each with a blank behind it.</summary>
    static string StillOn(in ControlState state)
    {
        var words = state.InCycle ? "G80 " : "";
        if (state.Coolant is not (CoolantState.Off or CoolantState.Unknown))
            words += "M9 ";
        return state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise ? words + "M5 " : words;
    }

    /// <summary>The last block behind a line that is nothing but its number and always runs, within the program and before the % that closes it; null where there is none.</summary>
    static int? NumberAlone(ProgramRun run, int line)
    {
        int? found = null;
        for (var next = line + 1; next < run.Text.LineCount; next++)
        {
            var block = run.BlockAt(next);
            if (block.BeginsProgram || (block.Tokens.Length > 0 && block.Tokens[0].Kind == TokenKind.Percent))
                break;
            if (block.NumberIndex >= 0 && !block.IsSkippable)
                found = next;
        }
        return found;
    }
}
