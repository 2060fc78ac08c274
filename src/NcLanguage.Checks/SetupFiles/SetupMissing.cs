using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A program with cycles or moves for which there is no setup file.</summary>
public sealed class SetupMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC8006",
        Name = "setup-missing",
        Severity = Severity.Note,
        Title = "No setup file: clamps, stock and tools are not checked",
        Finds = "A program that moves the tool and has neither PROGRAM.setup.json beside it nor an nc.setup.json above it.",
        AtTheMachine = "Nothing by itself; but no clamp, no stock and no tool is known, so the findings about them cannot come.",
        MentionMissingSetup = true,
        Example = """
            G21 G90 G17 G54
            ~^^^^^^^^^^^^^^
            G0 X0 Y0
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0
            M30
            """,
        InsteadSetup = """{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] } }""",
        NotFound = "A setup file that is there but says little: each rule is silent about what the file leaves out.",
        Source = "Our own convention.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (!file.Options.MentionMissingSetup || file.Run.Job.Setup.IsPresent || !Moves(file.Run))
            return;
        for (var line = file.Run.LeaderLines; line < file.Run.Text.LineCount; line++)
        {
            if (!file.Run.BlockAt(line).HasWords)
                continue;
            file.ReportBlock(this, line, "There is no setup file: contact with clamps and holder, cuts into supports, rapids into stock, holes beside the stock, "
                + "retract levels, flute lengths, tool numbers and lengths, and the drawing's holes are not checked.");
            return;
        }
    }

    static bool Moves(ProgramRun run)
    {
        foreach (var result in run.Results)
            if ((result.AllSets & (Slot.X | Slot.Y | Slot.Z | Slot.Hole)) != 0)
                return true;
        return false;
    }
}
