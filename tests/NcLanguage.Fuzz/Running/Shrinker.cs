using System.Diagnostics;
using System.Text;
using NcLanguage.Fuzz.Cases;

namespace NcLanguage.Fuzz.Running;

/// <summary>Makes a case that fails smaller, as long as it fails with the same sign: edits, files, lines, then bytes are left out.</summary>
static class Shrinker
{
    static readonly TimeSpan Longest = TimeSpan.FromSeconds(40);

    public static Failure Shrink(Failure failure, Action<FuzzCase> check)
    {
        var clock = Stopwatch.StartNew();
        for (var size = int.MaxValue; SizeOf(failure.Case) < size && clock.Elapsed < Longest;)
        {
            size = SizeOf(failure.Case);
            foreach (var pass in Passes(failure.Case))
                failure = Take(failure, pass, check, clock);
        }
        return failure;
    }

    static int SizeOf(FuzzCase a) =>
        a.Program.Length + (a.Setup?.Length ?? -1) + (a.Machine?.Length ?? -1) + (a.Cutting?.Length ?? -1) + (a.Called?.Length ?? -1) + a.Readings.Length
        + (a.IsPortable ? 1 : 0) + (a.Skips ? 1 : 0) + a.Edits.Sum(edit => 1 + edit.Text.Length);

    /// <summary>Ways to make a case smaller: each takes the case as it has become, and leaves out a row of its parts.</summary>
    static IEnumerable<(Func<FuzzCase, int> Parts, Func<FuzzCase, int, int, FuzzCase> Without)> Passes(FuzzCase of)
    {
        yield return (a => a.Edits.Length, (a, from, count) => a with { Edits = a.Edits.RemoveRange(from, count) });
        foreach (var file in Files)
        {
            yield return (a => file.Of(a) is null ? 0 : 1, (a, _, _) => file.With(a, null));
            yield return (a => Lines(file.Of(a)).Count, (a, from, count) => file.With(a, Joined(Lines(file.Of(a)), from, count)));
        }
        yield return (a => a.Readings.Length, (a, from, count) => a with { Readings = a.Readings.RemoveRange(from, count) });
        yield return (a => a.IsPortable ? 1 : 0, (a, _, _) => a with { IsPortable = false });
        yield return (a => a.Skips ? 1 : 0, (a, _, _) => a with { Skips = false });
        for (var i = 0; i < of.Edits.Length; i++)
        {
            var at = i;
            yield return (a => at < a.Edits.Length ? a.Edits[at].Text.Length : 0,
                (a, from, count) => a with { Edits = a.Edits.SetItem(at, a.Edits[at] with { Text = Cut(a.Edits[at].Text, from, count) }) });
        }
        foreach (var file in Files)
            yield return (a => file.Of(a)?.Length ?? 0, (a, from, count) => file.With(a, Cut(file.Of(a)!, from, count)));
    }

    static readonly (Func<FuzzCase, byte[]?> Of, Func<FuzzCase, byte[]?, FuzzCase> With)[] Files =
    [
        (a => a.Called, (a, bytes) => a with { Called = bytes }),
        (a => a.Cutting, (a, bytes) => a with { Cutting = bytes }),
        (a => a.Machine, (a, bytes) => a with { Machine = bytes }),
        (a => a.Setup, (a, bytes) => a with { Setup = bytes }),
        (a => a.Program, (a, bytes) => a with { Program = bytes ?? [] }),
    ];

    /// <summary>Leaves out half of the parts, then quarters and so on, down to single ones.</summary>
    static Failure Take(Failure failure, (Func<FuzzCase, int> Parts, Func<FuzzCase, int, int, FuzzCase> Without) pass, Action<FuzzCase> check, Stopwatch clock)
    {
        for (var count = pass.Parts(failure.Case); count >= 1; count /= 2)
        {
            for (var from = 0; from < pass.Parts(failure.Case) && clock.Elapsed < Longest;)
            {
                var smaller = pass.Without(failure.Case, from, Math.Min(count, pass.Parts(failure.Case) - from));
                if (Fails(smaller, failure, check) is { } failed)
                    failure = failed;
                else
                    from += count;
            }
        }
        return failure;
    }

    static Failure? Fails(FuzzCase smaller, Failure as_, Action<FuzzCase> check)
    {
        try
        {
            check(smaller);
            return null;
        }
        catch (Exception e)
        {
            return Failure.SignOf(e) == as_.Sign ? as_ with { Case = smaller, Detail = e.ToString() } : null;
        }
    }

    static List<string> Lines(byte[]? bytes)
    {
        var lines = new List<string>();
        var text = Encoding.Latin1.GetString(bytes ?? []);
        for (var start = 0; start < text.Length;)
        {
            var end = text.AsSpan(start).IndexOfAny('\r', '\n') is >= 0 and var at ? start + at + 1 : text.Length;
            lines.Add(text[start..end]);
            start = end;
        }
        return lines;
    }

    static byte[] Joined(List<string> lines, int from, int count) => Encoding.Latin1.GetBytes(string.Concat(lines.Where((_, i) => i < from || i >= from + count)));

    static byte[] Cut(byte[] bytes, int from, int count) => [.. bytes.AsSpan(0, from), .. bytes.AsSpan(from + count)];
}
