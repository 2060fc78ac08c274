using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A stop at which somebody is to reach to the part while the spindle turns.</summary>
public sealed class SpindleAtStop : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2044",
        Name = "spindle-at-stop",
        Severity = Severity.Warning,
        Title = "The spindle turns at a stop for work by hand",
        Finds = "M0 or M1 while the spindle turns, where the comment in its block says what hands do at the part: measure, gauge, inspect, flip, turn over, clamp, load, remove, insert, deburr, brush, clean, chips, swarf, tighten, loosen.",
        AtTheMachine = "The program stands still and the tool does not: whoever opens the guard and reaches to the part has a turning tool beside the hand.",
        Example = """
            G21 G90 G17 G54
            T4 M6
            S1500 M3
            G0 X10 Y10
            G43 H4 Z50 M8
            G1 Z-2 F200
            G0 Z80 M9
            M0 (MEASURE THE STEP)
            ~^
            S1500 M3
            M8
            G1 Z-3
            G0 Z80 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T4 M6
            S1500 M3
            G0 X10 Y10
            G43 H4 Z50 M8
            G1 Z-2 F200
            G0 Z80 M9
            M5
            M0 (MEASURE THE STEP)
            S1500 M3
            M8
            G1 Z-3
            G0 Z80 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes M5 as a block of its own before the stop. The program has to start the spindle again behind it.",
        NotFound = "Stops without such a comment in their own block, and comments in other languages. Some controls stop the spindle at M0 by themselves: there nothing is wrong until the program runs on another.",
        Source = "NISTIR 6556 §3.6.1: M0 and M1 stop the program, and nothing is said of the spindle. That M5 comes before work by hand is common practice.",
    };

    /// <summary>What hands do at a part. A word of the comment that begins so says it.</summary>
    static readonly string[] ByHand =
        ["MEASUR", "GAUG", "GAGE", "INSPECT", "FLIP", "CLAMP", "UNCLAMP", "RECLAMP", "UNLOAD", "RELOAD", "REMOVE", "INSERT", "DEBURR", "BRUSH", "CLEAN", "CHIPS", "SWARF", "TIGHTEN", "LOOSEN"];

    public override StepEvents Interest => StepEvents.Codes;

    public override void CheckStep(in StepContext step)
    {
        var words = step.Step.Words;
        var token = Math.Max(words.TokenOfCode('M', 0), words.TokenOfCode('M', 10));
        if (token < 0 || step.Step.After.Spindle is not (SpindleState.Clockwise or SpindleState.Counterclockwise) || !IsForHands(step))
            return;
        step.Report(this, token, $"{Quote.Word(step.Block, step.Block.Tokens[token])} stops the program for work at the part, and the spindle still turns: M5 belongs before it.", Slot.Spindle, "The spindle was started here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        return SpindleTurn.StopBefore(analysis, finding.Line);
    }

    static bool IsForHands(in StepContext step)
    {
        foreach (ref readonly var token in step.Block.Tokens)
            if (token.IsComment && IsForHands(Encoding.UTF8.GetString(step.Block.TextOf(token))))
                return true;
        return false;
    }

    static bool IsForHands(string comment)
    {
        var words = comment.ToUpperInvariant().Split(NoLetters, StringSplitOptions.RemoveEmptyEntries);
        // The load of a spindle is looked at, that of a part stands first.
        return words is ["LOAD", ..] || (words.Contains("TURN") && words.Contains("OVER"))
            || Array.Exists(words, said => Array.Exists(ByHand, word => said.StartsWith(word, StringComparison.Ordinal)));
    }

    static readonly char[] NoLetters = [.. Enumerable.Range(0, 128).Select(sign => (char)sign).Where(sign => !char.IsAsciiLetter(sign))];
}
