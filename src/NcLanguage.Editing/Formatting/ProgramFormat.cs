using System.Buffers;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Formatting;

/// <summary>How a program is to be tidied.</summary>
/// <param name="Step">Numbers every block anew in steps of this; 0 leaves the numbers as they are.</param>
/// <param name="FirstLine">The first line (0-based) that is tidied.</param>
/// <param name="LastLine">The last one.</param>
public sealed record FormatOptions(int Step = 0, int FirstLine = 0, int LastLine = int.MaxValue);

/// <summary>A program tidied.</summary>
/// <param name="Text">The tidy text; the text as it was where <paramref name="Refusal"/> says why.</param>
/// <param name="Refusal">Why nothing was done, one clause without a full stop; null where it was.</param>
public sealed record FormatResult(SourceText Text, string? Refusal);

/// <summary>Tidies a whole program, and holds the outcome against the original: motion that is not the same is not let through.</summary>
public static class ProgramFormat
{
    /// <summary>Lines between two looks at whether the tidy text is still wanted.</summary>
    const int LinesBetweenLooks = 1024;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static FormatResult Of(SourceText text, Job job, FormatOptions options, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(options);
        Renumbering? numbers = null;
        if (options.Step > 0)
        {
            numbers = Renumbering.Of(text, options.Step, out var refusal);
            if (numbers is null)
                return new FormatResult(text, refusal);
        }
        var tidy = Write(text, numbers, options, cancel);
        if (tidy.AsSpan().SequenceEqual(text.ToBytes()))
            return new FormatResult(text, null);
        var written = SourceText.From(tidy);
        var match = MotionMatch.Of(text, written, job, tolerance: 0, cancel);
        if (match.IsSame)
            return new FormatResult(written, null);
        // Where the numbers alone make the difference, something that is not seen in the text goes by them, as a called program that leads back to one.
        var byNumbers = numbers is not null && MotionMatch.Of(text, SourceText.From(Write(text, null, options, cancel)), job, tolerance: 0, cancel).IsSame;
        return new FormatResult(text, byNumbers
            ? $"numbered anew it would not move as it does now{MotionProof.Where(match)}: its run hangs on the old numbers, and nothing was changed"
            : $"the tidy program would not move as this one does{MotionProof.Where(match)}, so nothing was changed: please report it");
    }

    static byte[] Write(SourceText text, Renumbering? numbers, FormatOptions options, CancellationToken cancel)
    {
        var output = new ArrayBufferWriter<byte>(text.Length + 64);
        var blank = false;
        var ending = Encoding.ASCII.GetBytes(LineEnding.Of(text, 0));
        var block = new ArrayBufferWriter<byte>();
        for (var line = 0; line < text.LineCount; line++)
        {
            if (line % LinesBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            if (line < options.FirstLine || line > options.LastLine)
            {
                Keep(text, line, output);
                blank = false;
                continue;
            }
            block.ResetWrittenCount();
            if (numbers is null)
                BlockFormat.Write(text.BlockAt(line), [], block);
            else
                numbers.Write(line, text.BlockAt(line), block);
            if (block.WrittenCount == 0)
            {
                blank = true;
                continue;
            }
            // One empty line is left of a row of them, none at either end.
            if (blank && output.WrittenCount > 0)
                output.Write(ending);
            blank = false;
            output.Write(block.WrittenSpan);
            output.Write(ending);
        }
        return output.WrittenSpan.ToArray();
    }

    /// <summary>A line as it stands, with its ending.</summary>
    static void Keep(SourceText text, int line, ArrayBufferWriter<byte> output)
    {
        output.Write(text.Line(line));
        if (line < text.LineCount - 1)
            output.Write(Encoding.ASCII.GetBytes(LineEnding.Of(text, line)));
    }
}
