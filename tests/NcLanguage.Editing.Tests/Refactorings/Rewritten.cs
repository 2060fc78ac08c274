using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Refactorings on programs as text.</summary>
static class Rewritten
{
    /// <summary>The whole program after a refactoring at a cursor on a line (0-based).</summary>
    public static string At(int line, string name, string program, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null) =>
        In(Lines.At(line), name, program, setup, machine, options);

    public static string In(Lines lines, string name, string program, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null)
    {
        var analysis = Editor.Analyse(program, setup, machine, options);
        var result = Result(lines, name, analysis);
        Assert.Null(result.Refusal);
        var edited = Draft.Apply(analysis.Text, result.Edits);
        return edited.ToString();
    }

    public static string Refused(int line, string name, string program, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null)
    {
        var result = Result(Lines.At(line), name, Editor.Analyse(program, setup, machine, options));
        Assert.Empty(result.Edits);
        Assert.NotNull(result.Refusal);
        return result.Refusal;
    }

    public static bool IsOffered(Lines lines, string name, string program, string? setup = null) =>
        RefactoringList.Find(name)!.TitleFor(Editor.Analyse(program, setup), lines) is not null;

    static RefactoringResult Result(Lines lines, string name, ProgramAnalysis analysis)
    {
        var refactoring = RefactoringList.Find(name);
        Assert.NotNull(refactoring);
        Assert.NotNull(refactoring.TitleFor(analysis, lines));
        return refactoring.Of(analysis, lines, default);
    }
}
