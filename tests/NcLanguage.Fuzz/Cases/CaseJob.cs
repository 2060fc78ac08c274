using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Editing;
using NcLanguage.Machine.Files;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Cases;

/// <summary>A case as the program meets it: files in a folder that is nowhere on disk, searched and read as those of a user.</summary>
sealed class CaseJob : IFileAccess, IProgramFolder
{
    /// <summary>Blocks that a run is followed for at most; a loop that never ends comes to it in no time.</summary>
    public const int MostBlocks = 3000;

    public static string Folder { get; } = Path.GetFullPath(Path.DirectorySeparatorChar + Path.Combine("nowhere", "job"));

    public static string ProgramPath { get; } = Path.Combine(Folder, "part.nc");

    public static string SetupPath { get; } = Path.Combine(Folder, "part.setup.json");

    public static string MachinePath { get; } = Path.Combine(Folder, "nc.machine.json");

    public static string CuttingPath { get; } = Path.Combine(Folder, "nc.cutting.json");

    static readonly string CalledPath = Path.Combine(Folder, "O100.nc");

    readonly Dictionary<string, byte[]> _files = [];

    public CaseJob(FuzzCase of)
    {
        Case = of;
        Put(SetupPath, of.Setup);
        Put(MachinePath, of.Machine);
        Put(CuttingPath, of.Cutting);
        Put(CalledPath, of.Called);
        Text = SourceText.From(of.Program);
        Inputs = JobFiles.Resolve(ProgramPath, Folder, this, new JobOptions { Readings = of.Readings });
        Options = new AnalysisOptions(of.IsPortable, of.Skips, MentionMissingSetup: true, new SiblingPrograms(ProgramPath, this), MostBlocks);
    }

    public FuzzCase Case { get; }

    public SourceText Text { get; }

    public JobInputs Inputs { get; }

    public AnalysisOptions Options { get; }

    /// <param name="withTwoHands">Whether a large text may be run by two threads.</param>
    public ProgramAnalysis Analyse(SourceText? text = null, bool withTwoHands = false) =>
        ProgramAnalysis.Create(text ?? Text, Inputs.Setup, Inputs.Machine, Options with { WithTwoHands = withTwoHands });

    public FileAnswer Read(string path) => _files.TryGetValue(path, out var bytes) ? new FileAnswer(FileState.Read, bytes) : new FileAnswer(FileState.Missing);

    public IReadOnlyList<string> NamesIn(string folder) => folder == Folder ? [.. _files.Keys.Select(path => Path.GetFileName(path)), "part.nc"] : [];

    public IReadOnlyList<FolderProgram> Others(CancellationToken cancel) =>
        Case.Called is { } called ? [new FolderProgram(CalledPath, SourceText.From(called))] : [];

    void Put(string path, byte[]? bytes)
    {
        if (bytes is not null)
            _files[path] = bytes;
    }
}
