using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A spindle that is started without a speed.</summary>
public sealed class SpeedMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2014",
        Name = "speed-missing",
        Severity = Severity.Error,
        Title = "The spindle is started without a speed",
        Finds = "M3 or M4 before any S, when none comes before the first cut either.",
        AtTheMachine = "The spindle does not turn, or turns at the speed the program before has left.",
        Example = """
            G21 G90 G17 G54
            M3
            ~^
            G0 X10 Y10 Z5
            G1 Z-2 F100
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10 Z5
            G1 Z-2 F100
            G0 Z50
            M5
            M30
            """,
        NotFound = "A speed that belongs to the tool before: the speed is known then (speed-from-other-tool).",
        Source = "NISTIR 6556 §3.6.2 and §3.7.2.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        // The order of three events tells it: an S that comes behind M3, but before the first cut, is in time (NISTIR 6556 §3.6.2).
        var run = file.Run;
        var speed = run.FirstSetter(Slot.Speed);
        var cut = run.FirstSetter(Slot.Cut);
        if (speed >= 0 && (cut < 0 || run.OrderOf(speed) <= run.OrderOf(cut)))
            return;
        for (int line = run.FirstSetter(Slot.Spindle), before = -1; line >= 0 && run.OrderOf(line) > before; line = run.FirstSetter(Slot.Spindle, line))
        {
            before = run.OrderOf(line);
            if (speed >= 0 && run.OrderOf(line) >= run.OrderOf(speed))
                return;
            var token = StartToken(file.Run.BlockAt(line));
            if (token < 0)
                continue;
            // An S that the control refuses is told as such: value-not-allowed.
            if (file.Run.StepAt(line).Words.Has('S'))
                return;
            var word = file.Run.BlockAt(line).Tokens[token];
            if (!run.StateBefore(cut >= 0 && run.OrderOf(cut) > run.OrderOf(line) ? cut : line).IsCalled)
                file.Report(this, line, word.Start, word.End,
                    $"{Quote.Word(file.Run.BlockAt(line), word)} starts the spindle, but no speed (S) has been given: it stands still, or turns at the speed the program before has left.");
            return;
        }
    }

    static int StartToken(in Block block)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (block.Tokens[i].IsWord('M') && block.Tokens[i].Value is 3 or 4)
                return i;
        return -1;
    }
}
