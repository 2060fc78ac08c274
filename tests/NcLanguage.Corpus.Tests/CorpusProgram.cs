using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Corpus.Tests;

/// <summary>One program of tests/corpus with the setup and the machine beside it.</summary>
sealed class CorpusProgram
{
    static readonly ConcurrentDictionary<string, CorpusProgram> Read = new();

    readonly JobInputs _inputs;

    CorpusProgram(string name)
    {
        Name = name;
        Text = File.ReadAllText(Path);
        _inputs = JobFiles.Resolve(Path, Folder, DiskFiles.Instance, JobOptions.None);
    }

    /// <summary>tests/corpus of the checkout that the tests were built from.</summary>
    public static string Folder { get; } = Find();

    /// <summary>The names of all programs: one folder each.</summary>
    public static ImmutableArray<string> Names { get; } =
        [.. Directory.GetDirectories(Folder).Select(folder => System.IO.Path.GetFileName(folder)).Order(StringComparer.Ordinal)];

    public string Name { get; }

    public string Path => FileBeside(".nc");

    public string Text { get; }

    /// <summary>Mistakes in the setup and the machine.</summary>
    public IEnumerable<string> Mistakes => [.. _inputs.OptionErrors, .. _inputs.Problems.Select(problem => $"{problem.Path}, line {problem.Line}: {problem.Message}")];

    public static CorpusProgram Of(string name) => Read.GetOrAdd(name, name => new CorpusProgram(name));

    /// <summary>A file of the program's folder: its name with another ending.</summary>
    public string FileBeside(string ending) => System.IO.Path.Combine(Folder, Name, Name + ending);

    /// <summary>The program as the command checks it, or an edited version of it.</summary>
    /// <param name="readings">How the control reads it, where that is not as its own machine does.</param>
    public ProgramAnalysis Analyse(string? text = null, int mostBlocks = AnalysisOptions.MostBlocksByDefault, Readings? readings = null) => ProgramAnalysis.Create(
        SourceText.From(Encoding.UTF8.GetBytes(text ?? Text)), _inputs.Setup, readings is null ? _inputs.Machine : _inputs.Machine with { Readings = readings },
        new AnalysisOptions(MentionMissingSetup: true, Programs: new SiblingPrograms(Path, DiskFiles.Instance), MostBlocks: mostBlocks));

    static string Find([CallerFilePath] string here = "") =>
        System.IO.Path.GetFullPath(System.IO.Path.Combine(System.IO.Path.GetDirectoryName(here)!, "..", "corpus"));
}
