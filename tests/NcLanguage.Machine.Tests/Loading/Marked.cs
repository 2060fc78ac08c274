using System.Text;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Tests.Loading;

/// <summary>A file's text in which ⟦ and ⟧ mark the place that the only problem must have.</summary>
sealed class Marked
{
    public Marked(string source)
    {
        var start = source.IndexOf('⟦', StringComparison.Ordinal);
        var end = source.IndexOf('⟧', StringComparison.Ordinal);
        Text = source.Replace("⟦", "", StringComparison.Ordinal).Replace("⟧", "", StringComparison.Ordinal);
        if (start < 0)
            return;
        Start = Place(Text, start);
        End = Place(Text, end - 1);
    }

    public string Text { get; }

    public byte[] Bytes => Encoding.UTF8.GetBytes(Text);

    public (int Line, int Column) Start { get; }

    public (int Line, int Column) End { get; }

    /// <summary>Asserts one problem of this name at the marked place, whose message holds all the parts.</summary>
    public SetupProblem IsTheOnlyPlace(IReadOnlyList<SetupProblem> problems, string name, params string[] parts)
    {
        var all = string.Join("\n", problems);
        Assert.True(problems.Count == 1, $"one problem expected, found {problems.Count}:\n{all}");
        var problem = problems[0];
        Assert.Equal(name, problem.Name);
        Assert.True(Start == (problem.Line, problem.Column) && End == (problem.EndLine, problem.EndColumn), $"{Start}-{End} expected: {all}");
        foreach (var part in parts)
            Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.EndsWith(problem.Message.Contains("did you mean", StringComparison.Ordinal) && problem.Message.EndsWith('?') ? "?" : ".", problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
        return problem;
    }

    static (int, int) Place(string text, int index)
    {
        var before = text[..index];
        var line = before.Count(c => c == '\n') + 1;
        return (line, index - (before.LastIndexOf('\n') + 1) + 1);
    }
}
