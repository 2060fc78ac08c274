using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>
/// The TextMate grammar, read by the same library that VS Code colours with, against programs annotated with the scopes
/// they must get. The runner is the npm package vscode-tmgrammar-test.
/// </summary>
public sealed class GrammarTests
{
    [EditorFact(Editor.Workbench)]
    public async Task Every_annotated_program_gets_its_scopes()
    {
        Assert.True(Editors.Missing(Editor.Workbench) is null, Editors.Missing(Editor.Workbench));
        var runner = Repository.At("editor-clients", "vscode", "node_modules", "vscode-tmgrammar-test", "dist", "unit.js");
        var told = await CommandLine.OutputAsync(
            ["node", runner, "-g", Repository.At("grammars", "nc.tmLanguage.json"), Repository.At("tests", "NcLanguage.EndToEnd", "grammar", "*.nc")],
            TimeSpan.FromMinutes(1));
        // One line for each program that passed. A pattern that matches no file ends well too, and would leave none.
        var programs = Directory.GetFiles(Repository.At("tests", "NcLanguage.EndToEnd", "grammar"), "*.nc");
        Assert.NotEmpty(programs);
        Assert.All(programs, program => Assert.Contains($"✓ {program}", told, StringComparison.Ordinal));
    }
}
