using System.Collections.Immutable;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>Characters that do not survive the way to the control.</summary>
public sealed class CharacterNotSendable : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1011",
        Name = "character-not-sendable",
        Severity = Severity.Warning,
        Title = "A character cannot be sent to the control",
        Finds =
            "In comments, bytes beyond ASCII and control characters; lower-case letters anywhere where the profile says that the control takes none; signs that the profile's list lacks; and "
            + "a byte order mark at the beginning of a line.",
        AtTheMachine = "The transfer stops, or the control shows other characters, or takes one of them as the end of the block.",
        Example = """
            G21 G90 G17 G54
            (plate, 20 °C)
            ~          ^^
            G0 X10 Y10
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            (plate, 20 deg C)
            G0 X10 Y10
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Writes upper-case letters, or takes away a byte order mark. Respelling a comment in the nearest ASCII letters is offered, and never done unasked.",
        NotFound = "Characters outside comments: they are unknown-character.",
        Source = "ISO 6983-1 and ISO/IEC 646: programs are written in a 7-bit code (from memory).",
    };

    /// <summary>Where the control takes all signs, what it cannot be sent stands in comments alone, or is the mark at a line's beginning.</summary>
    const StepEvents Comments = StepEvents.OddText | StepEvents.NotRun | StepEvents.Skipped;

    public override StepEvents Interest => StepEvents.Words;

    public override StepEvents InterestIn(Job job) => job.Readings.ProgramMarks is { LowerCase: true, Characters: null } ? Comments : Interest;

    public override void CheckStep(in StepContext step)
    {
        // The line with % that opens a file does not run as a block, but is sent like any other.
        if (step.Block.Line.StartsWith(BlockLexer.ByteOrderMark))
            step.Report(this, (0, BlockLexer.ByteOrderMark.Length), "The editor has put a byte order mark before the text: a control takes it for three characters of the program.");
        if (!step.IsRun)
            return;
        foreach (ref readonly var token in step.Block.Tokens)
        {
            if (!token.IsComment || Span(step.Block.TextOf(token), static c => c >= 0x7F || c < ' ' && c != '\t') is not { } span)
                continue;
            var odd = step.Block.Line[(token.Start + span.Start)..(token.Start + span.End)];
            var what = odd.ContainsAnyInRange((byte)0x80, (byte)0xFF) ? $"\"{Quote.Text(odd)}\" in this comment is not plain ASCII" : $"This comment holds {Quote.ControlCharacter(odd)}";
            step.Report(this, (token.Start + span.Start, token.Start + span.End), $"{what}: the control may stop loading here or show something else.", text: "ascii");
        }
        if (!step.Job.Readings.ProgramMarks.LowerCase && Span(step.Block.Line, static c => c is >= (byte)'a' and <= (byte)'z') is { } lower)
            step.Report(this, lower, "This control takes no lower-case letters.", text: "upper");
        if (step.Job.Readings.ProgramMarks.Characters is { } signs)
            CheckSigns(step, signs);
    }

    /// <summary>Reports the first sign of a block that the control does not take; unknown-character has its own.</summary>
    void CheckSigns(in StepContext step, string signs)
    {
        foreach (ref readonly var token in step.Block.Tokens)
        {
            if (token.Kind == TokenKind.Unknown)
                continue;
            for (var at = token.Start; at < token.End; at++)
            {
                var sign = (char)step.Block.Line[at];
                if (sign is <= ' ' or >= '\x7F' || char.IsAsciiLetterOrDigit(sign) || signs.Contains(sign, StringComparison.Ordinal))
                    continue;
                step.Report(this, (at, at + 1), $"This control takes no \"{sign}\": the transfer stops here, or the sign is left out.", text: "sign");
                return;
            }
        }
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        // What a sign is to be written as instead only the programmer knows.
        if (finding.Text == "sign")
            return [];
        var line = analysis.Text.Line(finding.Line);
        if (finding.Text == "upper")
            return [new Fix("Write it in upper case", FixSafety.Safe, Upper(finding, line))];
        // Respelling a comment loses what somebody wrote: that is for them to decide.
        var (title, text, safety) = finding.Text switch
        {
            "ascii" => ("Write it in ASCII", AsciiSpelling.Nearest(line, finding.StartColumn, finding.EndColumn), FixSafety.Choice),
            _ => ("Remove the byte order mark", "", FixSafety.Safe),
        };
        return [new Fix(title, safety, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, text)])];
    }

    /// <summary>Each stretch of lower-case letters by itself: what stands between them, which may be bytes of any encoding, stays as it is.</summary>
    static ImmutableArray<Edit> Upper(Finding finding, ReadOnlySpan<byte> line)
    {
        var edits = ImmutableArray.CreateBuilder<Edit>();
        for (var start = finding.StartColumn; start < finding.EndColumn;)
        {
            var end = start;
            while (end < finding.EndColumn && line[end] is >= (byte)'a' and <= (byte)'z')
                end++;
            if (end > start)
                edits.Add(new Edit(finding.Line, start, end, Encoding.ASCII.GetString(line[start..end]).ToUpperInvariant()));
            start = end + 1;
        }
        return edits.ToImmutable();
    }

    /// <summary>From the first to behind the last byte that cannot be sent.</summary>
    static (int Start, int End)? Span(ReadOnlySpan<byte> text, Func<byte, bool> isBad)
    {
        var start = 0;
        while (start < text.Length && !isBad(text[start]))
            start++;
        if (start == text.Length)
            return null;
        var end = text.Length;
        while (!isBad(text[end - 1]))
            end--;
        return (start, end);
    }
}
