using System.Collections.Immutable;
using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Gathers the mistakes of one file, in the order of their places.</summary>
internal sealed class ProblemList(string path, LineMap lines)
{
    private readonly List<SetupProblem> _problems = [];

    public string Path => path;

    public int LineOf(ByteRange range) => lines.At(range.Start).Line;

    public void Add(ProblemKind kind, ByteRange range, string message, string? replacement = null) =>
        _problems.Add(At(kind, range, message) with { Replacement = replacement });

    /// <summary>Nothing of the file can be used: why, and what becomes of it, both without their full stop.</summary>
    public void AddMalformed(ByteRange range, string fault, string consequence) =>
        _problems.Add((At(ProblemKind.Malformed, range, "") with { Fault = fault }).WithConsequence(consequence));

    public SetupProblem At(ProblemKind kind, ByteRange range, string message)
    {
        var start = lines.At(range.Start);
        var end = lines.At(range.End);
        return new SetupProblem(kind, path, start.Line, start.Column, end.Line, end.Column, message);
    }

    public ImmutableArray<SetupProblem> ToArray() =>
        [.. _problems.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column)];
}
