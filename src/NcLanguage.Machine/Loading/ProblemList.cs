using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Gathers the mistakes of one file, in the order of their places.</summary>
sealed class ProblemList(string path, LineMap lines)
{
    /// <summary>Mistakes of one file that are told; of more their number. Whoever has so many looks at the first.</summary>
    public const int MostTold = 500;

    readonly List<SetupProblem> _problems = [];
    int _notTold;

    public string Path => path;

    public int LineOf(ByteRange range) => lines.At(range.Start).Line;

    public void Add(ProblemKind kind, ByteRange range, string message, string? replacement = null)
    {
        if (_problems.Count < MostTold)
            _problems.Add(At(kind, range, message) with { Replacement = replacement });
        else
            _notTold++;
    }

    /// <summary>Nothing of the file can be used: why, and what becomes of it, both without their full stop.</summary>
    public void AddMalformed(ByteRange range, string fault, string consequence) =>
        _problems.Add((At(ProblemKind.Malformed, range, "") with { Fault = fault }).WithConsequence(consequence));

    public SetupProblem At(ProblemKind kind, ByteRange range, string message)
    {
        var start = lines.At(range.Start);
        var end = lines.At(range.End);
        return new SetupProblem(kind, path, start.Line, start.Column, end.Line, end.Column, message);
    }

    public ImmutableArray<SetupProblem> ToArray()
    {
        List<SetupProblem> told = [.. _problems.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column)];
        if (_notTold > 0)
            told.Add(told[^1] with { Replacement = null, Message = string.Create(CultureInfo.InvariantCulture, $"{(_notTold == 1 ? "1 more mistake of this file is" : $"{_notTold} more mistakes of this file are")} not told: {MostTold} are told at most.") });
        return [.. told];
    }
}
